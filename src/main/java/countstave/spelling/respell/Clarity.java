package countstave.spelling.respell;

import countstave.time.Offset;
import countstave.time.Proportion;
import java.util.List;

/**
 * Whether one note or rest may stand undivided where it stands, or whether it hides a beat that a tie would show.
 *
 * <p>Accepted (common practice; from memory the same in Gould, <i>Behind Bars</i>, and Read, <i>Music Notation</i>):
 * whole beats and groups; a dotted note from the start of two beats, and its mirror image; the simple syncopations
 * quarter–half–quarter over a 4/4 bar and eighth–quarter–eighth over two beats; anything inside one beat.
 */
public final class Clarity {

    private final MeterFrame frame;

    public Clarity(MeterFrame frame) {
        this.frame = frame;
    }

    /**
     * What a note hides.
     *
     * @param at the hidden boundary
     * @param middle whether it is the middle of the bar
     */
    public record Hidden(Offset at, boolean middle) {
    }

    /** What a note from {@code start} to {@code end} hides, or null where it is clear. */
    public Hidden note(Offset start, Offset end) {
        Crossing crossing = crossing(start, end);
        if (crossing == null || isClear(crossing.left(), crossing.right(), crossing.last - crossing.first, start, end)) {
            return null;
        }
        return hidden(crossing);
    }

    /**
     * What a rest from {@code start} to {@code end} hides, or null. Stricter than for notes off the beat (a rest has
     * no syncopation), but any rest that begins on a beat may run on inside its half of the bar.
     */
    public Hidden rest(Offset start, Offset end) {
        return rest(start, end, true);
    }

    /** As {@link #rest(Offset, Offset)}; without {@code lenient} a rest must also end where a beat or group ends. */
    Hidden rest(Offset start, Offset end, boolean lenient) {
        Crossing crossing = crossing(start, end);
        if (crossing == null) {
            return null;
        }
        boolean opens = start.equals(crossing.left().start());
        boolean closes = end.equals(crossing.right().end());
        boolean clear = opens && (closes || lenient && crossing.right().middle() != null);
        return clear ? null : hidden(crossing);
    }

    /** The innermost span of which a note or rest touches more than one part, and which of its parts those are. */
    private record Crossing(Span span, int first, int last) {

        Span left() {
            return span.parts().get(first);
        }

        Span right() {
            return span.parts().get(last);
        }
    }

    /** Where the stretch crosses a boundary that the bar shows, or null where it crosses none. */
    private Crossing crossing(Offset start, Offset end) {
        Span span = frame.bar();
        if (!span.holds(start, end)) {
            return null;
        }
        while (span.level() != Span.Level.BEAT && span.level() != Span.Level.PART && !span.given().isEmpty()) {
            List<Span> parts = span.parts();
            int first = indexAt(parts, start);
            int last = indexBefore(parts, end);
            if (first != last) {
                return new Crossing(span, first, last);
            }
            span = parts.get(first);
        }
        return null;
    }

    private static boolean isClear(Span first, Span last, int crossed, Offset start, Offset end) {
        boolean opens = start.equals(first.start());
        boolean closes = end.equals(last.end());
        if (opens && closes) {
            return true;
        }
        if (crossed > 1 || !first.length().equals(last.length())) {
            return false;
        }
        boolean startsWell = opens || start.equals(first.middle());
        boolean endsWell = closes || end.equals(last.middle()) || opens && isManyDotted(last, end);
        return startsWell && endsWell;
    }

    /** Whether a note from the start of the span before ends here with two dots or more: 3/4, 7/8 ... of the last span. */
    private static boolean isManyDotted(Span last, Offset end) {
        Proportion missing = last.end().minus(end).over(last.length());
        return last.middle() != null && missing.numerator() == 1 && MeterFrame.isPowerOfTwo(missing.denominator());
    }

    private Hidden hidden(Crossing crossing) {
        List<Span> parts = crossing.span.parts();
        boolean middle = crossing.span == frame.bar() && parts.size() == 2 && parts.get(0).level() == Span.Level.GROUP
                && parts.get(0).length().equals(parts.get(1).length());
        return new Hidden(parts.get(crossing.first + 1).start(), middle);
    }

    private static int indexAt(List<Span> parts, Offset at) {
        int index = 0;
        for (int i = 0; i < parts.size(); i++) {
            if (!parts.get(i).start().isAfter(at)) {
                index = i;
            }
        }
        return index;
    }

    private static int indexBefore(List<Span> parts, Offset end) {
        int index = 0;
        for (int i = 0; i < parts.size(); i++) {
            if (parts.get(i).start().isBefore(end)) {
                index = i;
            }
        }
        return index;
    }
}
