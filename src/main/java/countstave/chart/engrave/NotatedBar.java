package countstave.chart.engrave;

import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** A bar of notes and rests, measured. */
final class NotatedBar implements EngravedBar {

    private final MeasuringPass.Measured bar;
    private final Frame frame;
    private final Measures measures;

    NotatedBar(MeasuringPass.Measured bar, Frame frame) {
        this.bar = bar;
        this.frame = frame;
        this.measures = new Measures(frame.font, frame.context.text());
    }

    @Override
    public List<Column> columns() {
        List<Column> columns = new ArrayList<>();
        for (Moment moment : bar.moments()) {
            if (moment.isSpaced()) {
                columns.add(new Column(moment.at, moment.left, moment.right));
            }
        }
        return columns;
    }

    @Override
    public double prefixWidth(boolean lineStart) {
        return frame.prefix(lineStart).width();
    }

    @Override
    public double suffixWidth(boolean lineEnd) {
        return frame.suffix(lineEnd).width();
    }

    @Override
    public double leastContentWidth() {
        double width = 0;
        for (Chord rest : bar.barRests()) {
            Box box = rest.restBox();
            width = Math.max(width, box.width() + 2);
        }
        return width;
    }

    @Override
    public Placed place(Placing placing) {
        return new DrawingPass(bar, frame, placing, new Canvas(measures)).draw();
    }

    @Override
    public Set<String> notDrawn() {
        return NotDrawn.in(bar);
    }
}
