package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.count.BarCounts;
import countstave.count.NoteNames;
import countstave.grid.Segment;
import countstave.practice.Breath;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * The counts under the staff: a ruled line with a tick for each counted position, taller on the beats, and the words, or
 * a dot below a note that is felt and has no tick. All of it stands below the written notes. A breath sign hangs before
 * its tick, where no word and no mark of a change can meet it.
 */
final class CountsBelow {

    private static final double BREATH_SIZE = 2.2;
    private static final double BREATH_GAP = 0.2;
    private static final double BREATH_RISE = 0.5;

    private final Measures measures;
    private final ChangeMarks changes;
    private final Blanks blanks;

    /** @param blanks what is left to be written by hand */
    CountsBelow(Measures measures, NoteNames noteNames, Blanks blanks) {
        this(measures, noteNames, (bar, at) -> "", blanks);
    }

    /** @param names what a change is called, if anything, before the words of its mark */
    CountsBelow(Measures measures, NoteNames noteNames, ChangeMarks.Names names) {
        this(measures, noteNames, names, Blanks.NONE);
    }

    private CountsBelow(Measures measures, NoteNames noteNames, ChangeMarks.Names names, Blanks blanks) {
        this.measures = measures;
        this.changes = new ChangeMarks(measures, noteNames, names, blanks);
        this.blanks = blanks;
    }

    /** @return the line on which the words stand */
    double add(List<PlacedBar> placed, Skyline skyline, List<Shape> shapes) {
        double row = skyline.bottom() - Sizes.ROW_GAP - Sizes.TICK_BEAT;
        double cap = measures.text().capHeight(Sizes.SYLLABLE, Text.Style.BOLD);
        double drop = Sizes.SYLLABLE_DROP + cap;
        double baseline = row - (blanks.counts() ? Math.max(drop, blanks.room()) : drop);
        List<Shape> added = new ArrayList<>();
        for (PlacedBar bar : placed) {
            if (!bar.bar().isRun()) {
                ticks(bar, row, added);
            }
            if (blanks.counts()) {
                added.add(new Line(bar.x(Offset.ZERO), baseline, bar.endX(), baseline, Sizes.ROW_LINE_THICKNESS, Role.ROW_LINE, null));
                continue;
            }
            if (bar.bar().isRun()) {
                run(bar, baseline, added);
            } else {
                syllables(bar, bar.bar().shown(), baseline, added);
                breaths(bar, row, added);
            }
        }
        changes.add(placed, row, baseline, added);
        skyline.put(added, shapes, measures);
        return baseline;
    }

    private void run(PlacedBar bar, double baseline, List<Shape> shapes) {
        double middle = (bar.x(Offset.ZERO) + bar.endX()) / 2;
        shapes.add(new Text(bar.bar().restWords(), middle, baseline, Sizes.SYLLABLE, Text.Style.REGULAR,
                Text.Anchor.MIDDLE, Role.SYLLABLE_UNPLAYED, Offset.ZERO));
    }

    private static void ticks(PlacedBar bar, double row, List<Shape> shapes) {
        BarCounts counts = bar.bar().counts().get(0);
        BarTimeline timeline = bar.bar().timeline();
        shapes.add(new Line(bar.x(Offset.ZERO), row, bar.endX(), row, Sizes.ROW_LINE_THICKNESS, Role.ROW_LINE, null));
        TreeSet<Offset> positions = new TreeSet<>();
        for (Segment segment : counts.plan().segments()) {
            for (int k = 0; k < segment.positions(); k++) {
                positions.add(timeline.writtenAt(segment.position(k)));
            }
        }
        TreeSet<Offset> beats = new TreeSet<>();
        timeline.beats().stream().map(Beat::start).filter(b -> !b.isBefore(Offset.ZERO)).forEach(beats::add);
        positions.addAll(beats);
        for (Offset at : positions) {
            double x = bar.x(at);
            Beat beat = timeline.beatAt(at);
            boolean onBeat = beats.contains(at);
            // in irregular meters the written units are the beats: only those that open a group are tall
            boolean tall = onBeat && timeline.opens(beat);
            shapes.add(new Line(x, row, x, row + (tall ? Sizes.TICK_BEAT : Sizes.TICK),
                    tall ? Sizes.TICK_BEAT_THICKNESS : Sizes.TICK_THICKNESS, onBeat ? Role.TICK_BEAT : Role.TICK, at));
        }
    }

    /** @param shown the words, or the dots of felt notes */
    void syllables(PlacedBar bar, List<ShownCount> shown, double baseline, List<Shape> shapes) {
        for (ShownCount count : shown) {
            Text.Style style = count.played() ? Text.Style.BOLD : Text.Style.REGULAR;
            Role role = count.felt() ? Role.FELT : count.played() ? Role.SYLLABLE_PLAYED : Role.SYLLABLE_UNPLAYED;
            double x = bar.x(count.at());
            double half = measures.text().width(count.say(), Sizes.SYLLABLE, style) / 2;
            if (count.opens()) {
                shapes.add(new Text("(", x - half, baseline, Sizes.SYLLABLE, style, Text.Anchor.END, Role.PARENTHESIS,
                        count.at()));
            }
            shapes.add(new Text(count.say(), x, baseline, Sizes.SYLLABLE, style, Text.Anchor.MIDDLE, role, count.at()));
            if (count.closes()) {
                shapes.add(new Text(")", x + half, baseline, Sizes.SYLLABLE, style, Text.Anchor.START,
                        Role.PARENTHESIS, count.at()));
            }
        }
    }

    /** The sign is a raised one, so its baseline is below the line. */
    private void breaths(PlacedBar bar, double row, List<Shape> shapes) {
        double raised = measures.text().capHeight(BREATH_SIZE, Text.Style.BOLD) / 2;
        for (ShownCount count : bar.bar().shown()) {
            if (count.breath()) {
                shapes.add(new Text(Breath.SIGN, bar.x(count.at()) - BREATH_GAP, row + BREATH_RISE - raised, BREATH_SIZE,
                        Text.Style.BOLD, Text.Anchor.END, Role.BREATH, count.at()));
            }
        }
    }
}
