package countstave.chart.layout;

import countstave.chart.engrave.Placed;
import countstave.chart.font.Measures;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import java.util.HashMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Ties over the barlines of one staff along one line of music, bar by bar from left to right. */
final class TieLines {

    /** What is drawn of a tie that began on the line before, at most, in staff spaces. */
    private static final double FROM_BEFORE = 3;

    private final Measures measures;
    /** Those that have left a note and arrived nowhere yet. */
    private final Map<String, Placed.TieEnd> open = new LinkedHashMap<>();

    TieLines(Measures measures) {
        this.measures = measures;
    }

    /** What arrives comes from a bar before: a note that fills the bar ends one tie and then begins the next. */
    void add(PlacedBar bar, List<Placed.TieEnd> ends, List<Shape> shapes) {
        Map<Placed.TieEnd, Placed.TieEnd> starts = starts(ends);
        for (Placed.TieEnd tie : ends) {
            if (!tie.leaves()) {
                double x = bar.left() + tie.x();
                Placed.TieEnd start = starts.get(tie);
                double from = start != null ? start.x()
                        : Math.max(bar.left() + bar.bar().prefix(bar.placing().lineStart()) - 0.4, x - FROM_BEFORE);
                shapes.add(tie(from, start != null ? start.y() : tie.y(), x, tie.y(), start != null ? start.above() : tie.above()));
            }
        }
        // what nothing in this bar takes up leads to no note
        open.values().forEach(t -> shapes.add(tie(t.x(), t.y(), t.x() + Placed.HANGING_TIE, t.y(), t.above())));
        open.clear();
        for (Placed.TieEnd tie : ends) {
            if (tie.leaves()) {
                double x = bar.left() + tie.x();
                open.put(key(tie), new Placed.TieEnd(tie.voice(), tie.pitch(), true, x, tie.y(), tie.above()));
            }
        }
    }

    /** Where each of the arriving ends comes from: the same pitch of its voice, else one that sounds alike, of any voice. */
    private Map<Placed.TieEnd, Placed.TieEnd> starts(List<Placed.TieEnd> ends) {
        Map<Placed.TieEnd, Placed.TieEnd> starts = new HashMap<>();
        for (Placed.TieEnd tie : ends) {
            if (!tie.leaves() && open.containsKey(key(tie))) {
                starts.put(tie, open.remove(key(tie)));
            }
        }
        for (Placed.TieEnd tie : ends) {
            Iterator<Placed.TieEnd> left = open.values().iterator();
            while (!tie.leaves() && !starts.containsKey(tie) && left.hasNext()) {
                Placed.TieEnd start = left.next();
                if (start.pitch().soundsLike(tie.pitch())) {
                    starts.put(tie, start);
                    left.remove();
                }
            }
        }
        return starts;
    }

    private static String key(Placed.TieEnd tie) {
        return tie.voice() + "/" + tie.pitch().step() + tie.pitch().octave() + "/" + tie.pitch().alter();
    }

    /** What is still open goes on in the next line. */
    void end(double end, List<Shape> shapes) {
        open.values().forEach(t -> shapes.add(tie(t.x(), t.y(), Math.max(end, t.x() + 1), t.y(), t.above())));
    }

    private Curve tie(double x1, double y1, double x2, double y2, boolean above) {
        double height = Math.min(1.3, 0.45 + 0.06 * Math.abs(x2 - x1));
        return new Curve(x1, y1, x2, y2, above ? height : -height, measures.music().engraving("tieEndpointThickness"),
                measures.music().engraving("tieMidpointThickness"), Role.TIE, null);
    }
}
