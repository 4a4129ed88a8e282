package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Tuplet;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.spelling.Sounds;
import countstave.spelling.Suggestion;
import countstave.spelling.respell.Group;
import countstave.spelling.respell.Item;
import countstave.spelling.respell.MeterFrame;
import countstave.time.Offset;
import java.util.List;

/** {@code tuplet-off-beat}. */
final class TupletOffBeat extends TupletRule {

    TupletOffBeat() {
        super(new RuleInfo("tuplet-off-beat", Severity.HINT,
                "A tuplet begins off the beat and runs across the next one, and could begin on the beat.",
                "The player resets the count on a beat, not inside one.",
                "Begin the tuplet on the beat.",
                "4/4: a single triplet eighth, then a 3 over the next three triplet eighths, then two more",
                "4/4: an eighth, a triplet of eighths across beat 2, an eighth: no tuplet on the beat has these attacks"
                        + " with so few notes",
                Sources.GOULD));
    }

    @Override
    void check(BarView bar, Voice voice, Tuplet tuplet, List<Event> events, Findings findings) {
        MeterFrame frame = bar.frame();
        Offset from = frame.beatAt(tuplet.start()).start();
        boolean crosses = !frame.isBeatStart(tuplet.start())
                && frame.beatAt(tuplet.start()).end().isBefore(tuplet.end());
        if (!crosses || from.isBefore(Offset.ZERO)) {
            return;
        }
        Offset to = frame.isBeatStart(tuplet.end()) ? tuplet.end() : frame.beatAt(tuplet.end()).end();
        // a beat inside another tuplet is no place to begin or end
        boolean cuts = bar.bar().tuplets().stream().filter(t -> t.events().voice().equals(voice.name()) && t.depth() == 0)
                .anyMatch(t -> t.hides(from) || t.hides(to));
        Suggestion suggestion = cuts ? null : Sounds.respell(frame, voice, from, to);
        if (suggestion == null || suggestion.items().stream().noneMatch(Group.class::isInstance)
                || !suggestion.items().stream().allMatch(item -> startsWell(frame, tuplet, item))) {
            return;
        }
        long now = BarView.timed(voice).stream().filter(e -> e.start().isWithin(from, to)).count();
        if (symbols(suggestion.items()) <= now) {
            findings.add(bar, voice.name(), events.get(0), p -> p.text("found.off-beat", tuplet.ratio().toString()), suggestion);
        }
    }

    private static boolean startsWell(MeterFrame frame, Tuplet tuplet, Item item) {
        return !(item instanceof Group group) || frame.isBeatStart(group.start())
                && !group.length().isLongerThan(tuplet.length());
    }

    private static int symbols(List<Item> items) {
        return items.stream().mapToInt(i -> i instanceof Group g ? symbols(g.items()) : 1).sum();
    }
}
