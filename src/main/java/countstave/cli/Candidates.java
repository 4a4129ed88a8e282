package countstave.cli;

import countstave.count.AndWords;
import countstave.count.CountingSystem;
import countstave.plain.Phrases;
import countstave.score.NoteValue;
import countstave.sound.Layer;
import countstave.spelling.Severity;
import countstave.spelling.rules.AllRules;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.stream.Stream;

/** What may be completed behind an option that takes one of many words; asked for only when the words are needed. */
abstract class Candidates implements Iterable<String> {

    /** The words, which only whoever goes through them makes: picocli makes an object of each class for every run. */
    abstract Iterable<String> words();

    @Override
    public final Iterator<String> iterator() {
        return words().iterator();
    }

    /** For {@code --system}. */
    static final class Systems extends Candidates {
        @Override
        Iterable<String> words() {
            return CountingSystem.names();
        }
    }

    /** For {@code --and}. */
    static final class Languages extends Candidates {
        @Override
        Iterable<String> words() {
            return AndWords.languages().stream().map(AndWords.Language::code).toList();
        }
    }

    /** For {@code --language}. */
    static final class PageLanguages extends Candidates {
        @Override
        Iterable<String> words() {
            return Phrases.codes();
        }
    }

    /** For {@code --rule} and {@code --without}. */
    static final class RuleNames extends Candidates {
        @Override
        Iterable<String> words() {
            return AllRules.ids();
        }
    }

    /** For {@code --least}. */
    static final class Levels extends Candidates {
        @Override
        Iterable<String> words() {
            return Stream.of(Severity.values()).map(Severity::word).toList();
        }
    }

    /** For {@code --beat}: those that meters have. */
    static final class Beats extends Candidates {
        @Override
        Iterable<String> words() {
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
        @Override
        Iterable<String> words() {
            return List.of("score", "straight", "2:1", "3:2", "2:1@16th");
        }
    }

    /** For {@code --steadiness}. */
    static final class Steadiness extends Candidates {
        @Override
        Iterable<String> words() {
            return SteadinessConverter.NAMES.keySet();
        }
    }

    /** For {@code --layers}. */
    static final class Layers extends Candidates {
        @Override
        Iterable<String> words() {
            return Stream.of(Layer.values()).map(Layer::id).toList();
        }
    }

    /** The commands themselves. */
    static final class CommandNames extends Candidates {
        @Override
        Iterable<String> words() {
            return Commands.NAMES;
        }
    }
}
