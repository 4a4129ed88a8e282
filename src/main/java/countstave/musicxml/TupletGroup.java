package countstave.musicxml;

import countstave.score.Event;
import countstave.score.EventRange;
import countstave.score.NoteValue;
import countstave.score.Tuplet;
import countstave.score.TupletMark;
import countstave.score.Voice;
import countstave.score.Written;
import countstave.time.Duration;
import countstave.time.Proportion;
import countstave.time.Ratio;
import java.util.ArrayList;
import java.util.List;

/** A tuplet in the making: a run of events of one voice, with the tuplets nested in it. */
final class TupletGroup {

    final int first;
    int last;
    final TupletMark mark;
    final List<TupletGroup> inner = new ArrayList<>();
    /** The product of the ratios of this group and of those around it. */
    Ratio cumulative = Ratio.ONE;
    /** This group's own ratio. */
    Ratio own = Ratio.ONE;

    TupletGroup(int first, int last, TupletMark mark) {
        this.first = first;
        this.last = last;
        this.mark = mark;
    }

    /** The events that stand in this group but in none of its inner ones, by index. */
    List<Integer> direct(List<Event> events) {
        List<Integer> direct = new ArrayList<>();
        int i = first;
        for (TupletGroup group : inner) {
            for (; i < group.first; i++) {
                direct.add(i);
            }
            i = Math.max(i, group.last + 1);
        }
        for (; i <= last; i++) {
            direct.add(i);
        }
        direct.removeIf(index -> events.get(index).isGrace());
        return direct;
    }

    /** The ratio that leads from {@code outer} to {@code cumulative}, with terms as whole as they can be; null if none. */
    static Ratio between(Ratio outer, Ratio cumulative) {
        if (cumulative.actual() % outer.actual() == 0 && cumulative.normal() % outer.normal() == 0) {
            return new Ratio(cumulative.actual() / outer.actual(), cumulative.normal() / outer.normal());
        }
        Proportion quotient = Proportion.of((long) cumulative.actual() * outer.normal(),
                (long) cumulative.normal() * outer.actual());
        return quotient.numerator() > Integer.MAX_VALUE || quotient.denominator() > Integer.MAX_VALUE ? null
                : new Ratio((int) quotient.numerator(), (int) quotient.denominator());
    }

    Tuplet toTuplet(Voice voice, int depth) {
        List<Event> events = voice.events();
        Event opening = events.get(first);
        Duration span = events.get(last).end().minus(opening.start());
        Duration unit = statedUnit(events);
        boolean complete = unit != null && unit.times(own.actual()).equals(span);
        if (!complete && (mark == null || mark.actualValue() == null)) {
            Duration fitting = span.dividedBy(own.actual());
            if (isValue(cumulative.undo(fitting))) {
                unit = fitting;
                complete = true;
            }
        }
        if (unit == null) {
            unit = shortest(events);
        }
        return new Tuplet(new EventRange(voice.name(), opening.staff(), first, last), opening.start(), span, own, unit,
                depth, complete, mark);
    }

    /** The unit as the bracket or {@code normal-type} names it, or null. */
    private Duration statedUnit(List<Event> events) {
        if (mark != null && mark.actualValue() != null) {
            return cumulative.applyTo(mark.actualValue().length());
        }
        for (int index : direct(events)) {
            Written written = events.get(index).written();
            if (written != null && written.normalValue() != null) {
                return cumulative.applyTo(written.normalValue().dotted(written.normalDots()));
            }
        }
        return null;
    }

    private Duration shortest(List<Event> events) {
        Duration shortest = null;
        for (int i = first; i <= last; i++) {
            Duration length = events.get(i).length();
            if (length.isPositive() && (shortest == null || length.isShorterThan(shortest))) {
                shortest = length;
            }
        }
        return shortest == null ? cumulative.applyTo(Duration.QUARTER) : shortest;
    }

    private static boolean isValue(Duration length) {
        return NoteValue.ofLength(length) != null || NoteValue.ofLength(length.times(2, 3)) != null;
    }
}
