package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Tuplet;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.spelling.Sounds;
import java.util.List;

/** {@code tuplet-all-dotted}. */
final class TupletAllDotted extends TupletRule {

    TupletAllDotted() {
        super(new RuleInfo("tuplet-all-dotted", Severity.WARNING,
                "A 3:2 tuplet holds only dotted notes: each of them is a plain note.",
                "A dotted eighth in a triplet lasts exactly an eighth; bracket and dots cancel out.",
                "Write plain notes without a bracket.",
                "two dotted eighths under a 3 over a quarter: two plain eighths",
                "dotted eighth, 16th and eighth under a 3: the middle attack needs the triplet",
                "arithmetic (3/2 × 2/3 = 1); " + Sources.PRACTICE));
    }

    @Override
    void check(BarView bar, Voice voice, Tuplet tuplet, List<Event> events, Findings findings) {
        if (holds(tuplet, events)) {
            findings.add(bar, voice.name(), events.get(0), p -> p.text("found.all-dotted", tuplet.ratio().toString()),
                    Sounds.respell(bar.frame(), voice, tuplet.start(), tuplet.end()));
        }
    }

    static boolean holds(Tuplet tuplet, List<Event> events) {
        boolean thirds = tuplet.ratio().actual() * 2 == tuplet.ratio().normal() * 3;
        return thirds && events.stream().allMatch(e -> e.written().dots() == 1
                && e.written().ratio().sameProportionAs(tuplet.ratio()));
    }
}
