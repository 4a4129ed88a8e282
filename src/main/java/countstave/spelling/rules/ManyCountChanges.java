package countstave.spelling.rules;

import countstave.grid.BarPlan;
import countstave.grid.PlanOptions;
import countstave.grid.Planner;
import countstave.grid.Segment;
import countstave.score.PulseChoice;
import countstave.score.ScoreException;
import countstave.score.Selection;
import countstave.score.Timeline;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.PartView;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Offset;
import java.util.List;

/** {@code many-count-changes}. */
final class ManyCountChanges extends BaseRule {

    private static final int MANY = 4;

    ManyCountChanges() {
        super(new RuleInfo("many-count-changes", Severity.HINT,
                "The counting has to change four times or more in one bar.",
                "Such a bar has to be learned beat by beat; a cue or a simpler version may save a rehearsal.",
                "Nothing needs to be done; a cue or a simpler version may help the player.",
                "4/4: four 16ths, a triplet, a quintuplet, a sextuplet, after a bar of quarters",
                "4/4: 16ths, one triplet, 16ths: two changes",
                "countstave's own plan of the counting; no source"));
    }

    @Override
    public void check(PartView part, Findings findings) {
        if (!part.part().hasNotes()) {
            return;
        }
        List<BarPlan> plans;
        try {
            plans = Planner.plan(Timeline.of(part.part(), Selection.ALL, PulseChoice.BY_METER, null),
                    PlanOptions.DEFAULT).bars();
        } catch (ScoreException e) {
            // what cannot be counted at all is told by the commands that count
            return;
        }
        for (BarPlan plan : plans) {
            BarView bar = part.bar(plan.timeline().bar().index());
            List<String> places = plan.segments().stream().filter(Segment::change)
                    .map(segment -> bar.beatName(segment.start())).toList();
            // where the bar does not add up, the changes come of that
            if (places.size() >= MANY && bar.addsUp()) {
                findings.add(bar, null, Offset.ZERO, p -> p.text("found.many-changes", String.valueOf(places.size()),
                        String.join(", ", places.subList(0, places.size() - 1)), places.get(places.size() - 1)), null);
            }
        }
    }
}
