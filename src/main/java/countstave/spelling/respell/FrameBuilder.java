package countstave.spelling.respell;

import countstave.score.Meter;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/** Grows the tree of a {@link MeterFrame} from a time signature. */
final class FrameBuilder {

    private final Meter meter;
    private final Offset start;
    private boolean sure = true;
    private boolean compound = true;

    FrameBuilder(Meter meter, Offset start) {
        this.meter = meter;
        this.start = start;
    }

    boolean isSure() {
        return sure;
    }

    boolean isCompound() {
        return compound;
    }

    Span bar() {
        List<Span> groups = new ArrayList<>();
        Offset at = start;
        for (Meter.Component component : meter.components()) {
            for (int number : component.numbers()) {
                Duration length = Duration.of(number, component.unit());
                boolean alone = meter.components().size() == 1 && !component.isAdditive();
                groups.add(group(at, number, component.unit(), alone));
                at = at.plus(length);
            }
        }
        if (groups.size() > 1) {
            return new Span(start, meter.length(), Span.Level.BAR, List.copyOf(groups));
        }
        Span only = groups.get(0);
        List<Span> parts = only.level() == Span.Level.BEAT ? List.of(only) : only.given();
        return new Span(start, meter.length(), Span.Level.BAR, parts);
    }

    /** {@code number} units from {@code at}: a single beat, or a group of beats. */
    private Span group(Offset at, int number, int unit, boolean alone) {
        Span whole = new Span(at, Duration.of(number, unit), Span.Level.GROUP, List.of());
        boolean shortUnit = unit >= 8;
        sure &= MeterFrame.isPowerOfTwo(unit);
        if (number % 3 == 0 && (number > 3 || shortUnit) && (shortUnit || number == 6)) {
            return threes(whole, number / 3, shortUnit);
        }
        compound = false;
        if (number == 1 || shortUnit && number == 2) {
            return beat(whole, number);
        }
        if (number == 4 || number == 2 && unit == 2 && alone) {
            return fours(whole);
        }
        if (shortUnit && number > 4) {
            // 5/8, 7/8 and their like: the signature does not say how they are grouped
            sure = false;
        }
        return whole.withParts(whole.equal(number, Span.Level.BEAT));
    }

    private static Span beat(Span whole, int units) {
        Span beat = new Span(whole.start(), whole.length(), Span.Level.BEAT, List.of());
        return units == 3 ? beat.withParts(beat.equal(3, Span.Level.PART)) : beat;
    }

    /** 6/8, 9/8, 12/8: beats of three units; 6/4: two groups of three beats. */
    private Span threes(Span whole, int count, boolean dottedBeats) {
        if (!dottedBeats) {
            compound = false;
            List<Span> groups = whole.equal(count, Span.Level.GROUP).stream()
                    .map(g -> g.withParts(g.equal(3, Span.Level.BEAT))).toList();
            return whole.withParts(groups);
        }
        if (count == 1) {
            return beat(whole, 3);
        }
        if (count == 4) {
            List<Span> halves = whole.equal(2, Span.Level.GROUP).stream().map(h -> h.withParts(dotted(h, 2))).toList();
            return whole.withParts(halves);
        }
        return whole.withParts(dotted(whole, count));
    }

    private static List<Span> dotted(Span whole, int count) {
        return whole.equal(count, Span.Level.BEAT).stream().map(b -> beat(b, 3)).toList();
    }

    /** 4/4 and 2/2: two halves of two beats. */
    private static Span fours(Span whole) {
        List<Span> halves = whole.equal(2, Span.Level.GROUP).stream()
                .map(h -> h.withParts(h.equal(2, Span.Level.BEAT))).toList();
        return whole.withParts(halves);
    }
}
