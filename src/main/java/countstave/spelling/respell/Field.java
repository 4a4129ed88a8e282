package countstave.spelling.respell;

import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * A stretch of time in which plain note values hold: the bar itself, or the inside of a tuplet, where every value
 * lasts {@link #scale} times as long.
 */
final class Field implements Pieces.Ground {

    /** The finest position that note values reach: the 1024th. */
    private static final int SHORTEST = 1024;

    private final Span root;
    private final Ratio scale;
    private final int depth;
    private final Clarity clarity;

    private Field(Span root, Ratio scale, int depth, Clarity clarity) {
        this.root = root;
        this.scale = scale;
        this.depth = depth;
        this.clarity = clarity;
    }

    static Field of(MeterFrame frame) {
        return new Field(frame.bar(), Ratio.ONE, 0, new Clarity(frame));
    }

    /** The inside of a tuplet of {@code ratio} over {@code span}. */
    Field inside(Span span, Ratio ratio) {
        Span units = span.withParts(span.equal(ratio.actual(), Span.Level.PART));
        return new Field(units, scale.times(ratio), depth + 1, null);
    }

    Span root() {
        return root;
    }

    /** How many tuplets stand around. */
    int depth() {
        return depth;
    }

    @Override
    public Duration written(Duration length) {
        return scale.undo(length);
    }

    /** Whether plain values of this field reach {@code at} from the start of {@code from}, a span of this field. */
    boolean isPlain(Offset at) {
        long parts = written(at.minus(root.start())).denominator();
        return MeterFrame.isPowerOfTwo(parts) && parts <= SHORTEST;
    }

    @Override
    public boolean isClear(Offset from, Offset to, boolean rest) {
        if (clarity != null) {
            return (rest ? clarity.rest(from, to, false) : clarity.note(from, to)) == null;
        }
        Duration half = root.parts().get(0).length().dividedBy(2);
        boolean onHalves = from.minus(root.start()).isMultipleOf(half) && to.minus(root.start()).isMultipleOf(half);
        return onHalves || root.parts().stream().anyMatch(unit -> unit.holds(from, to));
    }

    @Override
    public int weakness(Offset at) {
        Span span = root;
        for (int level = 0; level < MeterFrame.NOWHERE; level++) {
            if (at.equals(span.start()) || at.equals(span.end())) {
                return level;
            }
            Span inner = part(span, at);
            if (inner == null) {
                break;
            }
            span = inner;
        }
        return MeterFrame.NOWHERE;
    }

    private static Span part(Span span, Offset at) {
        for (Span part : span.parts()) {
            if (part.holds(at, at)) {
                return part;
            }
        }
        return null;
    }

    @Override
    public List<Offset> cuts(Offset from, Offset to) {
        TreeSet<Offset> cuts = new TreeSet<>();
        collect(root, from, to, cuts, 0);
        return new ArrayList<>(cuts);
    }

    /** Beats and stronger boundaries between the two, and those on the way down to each of them. */
    private static void collect(Span span, Offset from, Offset to, TreeSet<Offset> cuts, int level) {
        if (!span.end().isAfter(from) || !span.start().isBefore(to) || level > MeterFrame.NOWHERE) {
            return;
        }
        for (Offset edge : List.of(span.start(), span.end())) {
            if (edge.isAfter(from) && edge.isBefore(to)) {
                cuts.add(edge);
            }
        }
        boolean wholly = !span.start().isBefore(from) && !span.end().isAfter(to);
        if (!wholly || span.level() == Span.Level.BAR || span.level() == Span.Level.GROUP || !span.given().isEmpty()) {
            span.parts().forEach(part -> collect(part, from, to, cuts, level + 1));
        }
    }
}
