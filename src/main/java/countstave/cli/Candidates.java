package countstave.cli;

import countstave.count.AndWords;
import countstave.count.CountingSystem;
import countstave.score.NoteValue;
import countstave.spelling.Severity;
import countstave.spelling.rules.AllRules;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;

/** What may be completed behind an option that takes one of many words; asked for only when the words are needed. */
abstract class Candidates implements Iterable<String> {

    private final Supplier<? extends Iterable<String>> words;

    private Candidates(Supplier<? extends Iterable<String>> words) {
        this.words = words;
    }

    @Override
    public Iterator<String> iterator() {
        return words.get().iterator();
    }

    /** For {@code --system}. */
    static final class Systems extends Candidates {
        Systems() {
            super(CountingSystem::names);
        }
    }

    /** For {@code --and}. */
    static final class Languages extends Candidates {
        Languages() {
            super(() -> AndWords.languages().stream().map(AndWords.Language::code).toList());
        }
    }

    /** For {@code --rule} and {@code --without}. */
    static final class RuleNames extends Candidates {
        RuleNames() {
            super(AllRules::ids);
        }
    }

    /** For {@code --least}. */
    static final class Levels extends Candidates {
        Levels() {
            super(() -> Stream.of(Severity.values()).map(Severity::word).toList());
        }
    }

    /** For {@code --beat}: those that meters have. */
    static final class Beats extends Candidates {
        Beats() {
            super(Beats::all);
        }

        private static List<String> all() {
            List<String> beats = new ArrayList<>(List.of("meter", "groups"));
            for (NoteValue value : List.of(NoteValue.HALF, NoteValue.QUARTER, NoteValue.EIGHTH, NoteValue.SIXTEENTH)) {
                beats.add(value.xmlName());
                beats.add("dotted-" + value.xmlName());
            }
            return beats;
        }
    }

    /** For {@code --swing}. */
    static final class Swings extends Candidates {
        Swings() {
            super(() -> List.of("score", "straight", "2:1", "3:2", "2:1@16th"));
        }
    }

    /** For {@code --steadiness}. */
    static final class Steadiness extends Candidates {
        Steadiness() {
            super(() -> List.of("few-words", "even", "one-count"));
        }
    }

    /** For {@code --layers}. */
    static final class Layers extends Candidates {
        Layers() {
            super(() -> List.of("bar", "beat", "grid", "rhythm"));
        }
    }

    /** The commands themselves. */
    static final class Commands extends Candidates {
        Commands() {
            super(() -> countstave.cli.Commands.NAMES);
        }
    }
}
