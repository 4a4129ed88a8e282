package countstave.chart.engrave;

import countstave.chart.font.Measures;
import java.util.Set;
import java.util.TreeSet;

/** A bar of signs that stand for notes: what is common to repeats, slashes and multi-bar rests. */
abstract class FramedBar implements EngravedBar {

    final Frame frame;

    FramedBar(Frame frame) {
        this.frame = frame;
    }

    Canvas canvas() {
        return new Canvas(new Measures(frame.font, frame.context.text()));
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
    public Set<String> notDrawn() {
        Set<String> names = new TreeSet<>(NotDrawn.around(frame.first, frame.context.staff()));
        names.addAll(NotDrawn.around(frame.last, frame.context.staff()));
        return names;
    }
}
