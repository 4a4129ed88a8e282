package countstave.spelling.rules;

import countstave.grid.CoveringGrid;
import countstave.score.Event;
import countstave.score.Tuplet;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.spelling.Sounds;
import countstave.time.Offset;
import java.util.List;
import java.util.TreeSet;

/** {@code tuplet-reducible}. */
final class TupletReducible extends TupletRule {

    TupletReducible() {
        super(new RuleInfo("tuplet-reducible", Severity.HINT,
                "A tuplet is divided more finely than its notes need.",
                "A 6 makes the reader count six where three are played.",
                "Write the coarser tuplet.",
                "a 6:4 of 16ths that holds three eighths: a triplet of eighths",
                "a 6:4 of 16ths that holds an eighth and four 16ths: the sixths are used",
                Sources.PRACTICE));
    }

    @Override
    void check(BarView bar, Voice voice, Tuplet tuplet, List<Event> events, Findings findings) {
        TreeSet<Offset> edges = edges(voice, tuplet.start(), tuplet.end());
        if (edges == null || edges.isEmpty()) {
            return;
        }
        long parts = CoveringGrid.parts(tuplet.start(), tuplet.end(), edges);
        int actual = tuplet.ratio().actual();
        // a power of two is a plain rhythm: another rule's business
        boolean coarser = parts < actual && actual % parts == 0 && Long.bitCount(parts) > 1;
        if (coarser) {
            findings.add(bar, voice.name(), events.get(0), p -> p.text("found.reducible", tuplet.ratio().toString(), String.valueOf(parts)),
                    Sounds.respell(bar.frame(), voice, tuplet.start(), tuplet.end()));
        }
    }
}
