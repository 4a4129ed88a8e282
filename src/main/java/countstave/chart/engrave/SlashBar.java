package countstave.chart.engrave;

import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Role;
import countstave.score.BarStyle;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/** A bar of slashes, one a beat: time to be kept, or (thinner, {@code beat-repeat}) a beat to be played again. */
final class SlashBar extends EngravedBar {

    private final List<Offset> beats = new ArrayList<>();
    private final String sign;

    SlashBar(BarTimeline bar, Frame frame) {
        super(frame);
        for (Beat beat : bar.beats()) {
            if (beat.start().compareTo(Offset.ZERO) >= 0) {
                beats.add(beat.start());
            }
        }
        sign = bar.bar().look().style().kind() == BarStyle.Kind.SLASH ? "noteheadSlashHorizontalEnds" : "repeatBarSlash";
    }

    @Override
    public List<Column> columns() {
        double half = frame.font.width(sign) / 2;
        return beats.stream().map(b -> new Column(b, half, half)).toList();
    }

    @Override
    public double leastContentWidth() {
        return 0;
    }

    @Override
    public Placed place(Placing placing) {
        Canvas canvas = canvas();
        Box box = frame.font.box(sign);
        double middle = StaffMap.middle(frame.lines());
        for (Offset beat : beats) {
            canvas.add(new Glyph(sign, placing.x().x(beat) - (box.left() + box.right()) / 2, middle, Role.SLASH, beat));
        }
        frame.shapes(placing).forEach(canvas::add);
        return Placed.of(canvas.shapes());
    }
}
