package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Tuplet;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.spelling.Suggestion;
import countstave.spelling.respell.MeterFrame;
import countstave.time.Duration;
import java.util.List;

/** {@code polyrhythm-plain}. */
final class PolyrhythmPlain extends TupletRule {

    /** The finest grid that counts as simpler: four to the beat, six to a dotted one. */
    private static final int FINEST = 4;
    private static final int FINEST_OF_DOTTED = 6;

    PolyrhythmPlain() {
        super(new RuleInfo("polyrhythm-plain", Severity.HINT,
                "A tuplet across beats falls on a plain grid of up to four to the beat (six to a dotted one), where it could be counted.",
                "Written with ties it shows the beats, and the player keeps the count that is going on.",
                "Write it with ties, or leave it where the bracket is wanted.",
                "3/4: a 4:3 of quarters, which falls on the 16ths: 0, 3, 6 and 9 of 12",
                "4/4: a 3:2 of quarters, which falls on no plain grid",
                "arithmetic: attack j of n notes against m beats falls in beat ⌊jm/n⌋ at (jm mod n)/n of it"));
    }

    @Override
    void check(BarView bar, Voice voice, Tuplet tuplet, List<Event> events, Findings findings) {
        MeterFrame frame = bar.frame();
        Duration beat = frame.beatAt(tuplet.start()).length();
        Suggestion plain = tuplet.length().isLongerThan(beat) ? PlainTuplets.plain(bar, voice, tuplet) : null;
        if (plain == null || plain.items().size() <= events.size()) {
            return;
        }
        Duration grid = beat.dividedBy(frame.isCompound() ? FINEST_OF_DOTTED : FINEST);
        boolean coarse = TupletRule.edges(voice, tuplet.start(), tuplet.end()).stream()
                .allMatch(e -> e.minus(frame.beatAt(e).start()).isMultipleOf(grid));
        if (coarse) {
            findings.add(bar, voice.name(), events.get(0), p -> p.text("found.polyrhythm-plain", tuplet.ratio().toString()), plain);
        }
    }
}
