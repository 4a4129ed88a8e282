package countstave.chart.engrave;

import countstave.score.Bar;
import countstave.score.BarStyle;
import countstave.score.BarTimeline;
import java.util.List;

/**
 * Engraves bars by the rules of common practice that are named at each class of this package; all thicknesses and
 * points of attachment come from the music font's SMuFL metadata.
 *
 * <p>In two passes, because beams, tuplets and ties need the width of the bar, and the width of the bar needs the
 * room of its signs: {@link MeasuringPass} measures, {@link DrawingPass} places.
 */
public final class NotationEngraver implements BarEngraver {

    @Override
    public EngravedBar engrave(BarTimeline bar, EngraveContext context) {
        BarStyle.Kind kind = bar.bar().look().style().kind();
        Frame frame = new Frame(bar.bar(), bar.bar(), context);
        return switch (kind) {
            case MEASURE_REPEAT -> new RepeatBar(frame);
            case SLASH, BEAT_REPEAT -> new SlashBar(bar, frame);
            default -> new MeasuringPass(bar, context).measure(frame);
        };
    }

    @Override
    public EngravedBar engraveRests(List<BarTimeline> bars, EngraveContext context) {
        Bar first = bars.get(0).bar();
        Bar last = bars.get(bars.size() - 1).bar();
        return new MultiRestBar(bars.size(), new Frame(first, last, context));
    }
}
