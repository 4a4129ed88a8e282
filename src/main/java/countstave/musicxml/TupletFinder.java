package countstave.musicxml;

import countstave.score.Event;
import countstave.score.NoteValue;
import countstave.score.Tuplet;
import countstave.score.TupletMark;
import countstave.score.Voice;
import countstave.score.Written;
import countstave.time.Duration;
import countstave.time.Ratio;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Finds the tuplets of a voice: those that the file brackets, and where it has no brackets, runs of notes whose
 * {@code time-modification} agrees and that fill n × a note value.
 *
 * <p>A note's {@code time-modification} is the product of all tuplets around it (MusicXML 4.0), so a group's own ratio
 * is what its notes have more than the group around it. Two-note tremolos carry one as well and are no tuplets.
 */
final class TupletFinder {

    private final Voice voice;
    private final List<Event> events;

    private TupletFinder(Voice voice) {
        this.voice = voice;
        this.events = voice.events();
    }

    /** The tuplets of all voices of a bar, by voice and start, outer before inner. */
    static List<Tuplet> find(List<Voice> voices) {
        List<Tuplet> tuplets = new ArrayList<>();
        for (Voice voice : voices) {
            if (hasTuplets(voice)) {
                new TupletFinder(voice).addTo(tuplets);
            }
        }
        return List.copyOf(tuplets);
    }

    private static boolean hasTuplets(Voice voice) {
        for (Event event : voice.events()) {
            if (!ratio(event).isPlain() || !event.tupletMarks().isEmpty()) {
                return true;
            }
        }
        return false;
    }

    private void addTo(List<Tuplet> tuplets) {
        TupletGroup whole = new TupletGroup(0, events.size() - 1, null);
        nest(whole, marked());
        settle(whole);
        infer(whole);
        collect(whole, 0, tuplets);
    }

    private void collect(TupletGroup group, int depth, List<Tuplet> tuplets) {
        for (TupletGroup inner : group.inner) {
            if (isShown(inner)) {
                tuplets.add(inner.toTuplet(voice, depth));
            }
            collect(inner, depth + 1, tuplets);
        }
    }

    /** A tuplet of which nothing is seen is nothing to count by. */
    private boolean isShown(TupletGroup group) {
        for (int i = group.first; i <= group.last; i++) {
            if (events.get(i).isNote() || events.get(i).printed()) {
                return true;
            }
        }
        return false;
    }

    private static Ratio ratio(Event event) {
        boolean shared = event.look().isSharedTremolo() && event.tupletMarks().isEmpty();
        return event.written() == null || event.isGrace() || shared ? Ratio.ONE : event.written().ratio();
    }

    /** The groups between tuplet starts and stops; one that stays open ends with the bar. */
    private List<TupletGroup> marked() {
        List<TupletGroup> groups = new ArrayList<>();
        List<TupletGroup> open = new ArrayList<>();
        for (int i = 0; i < events.size(); i++) {
            if (events.get(i).isGrace()) {
                continue;
            }
            List<TupletMark> marks = events.get(i).tupletMarks();
            List<TupletMark> stops = new ArrayList<>(marks.stream().filter(m -> !m.start()).toList());
            for (TupletMark mark : marks) {
                if (mark.start()) {
                    // a number that is used again ends what it stood for
                    boolean stopped = stops.removeIf(m -> m.number() == mark.number()
                            && close(open, m.number(), Integer.MAX_VALUE));
                    if (!stopped) {
                        close(open, mark.number(), i - 1);
                    }
                    TupletGroup group = new TupletGroup(i, events.size() - 1, mark);
                    groups.add(group);
                    open.add(group);
                }
            }
            for (TupletMark mark : stops) {
                close(open, mark.number(), i);
            }
        }
        groups.sort(Comparator.<TupletGroup>comparingInt(g -> g.first).thenComparing(g -> -g.last)
                .thenComparing(g -> g.mark.number()));
        return groups;
    }

    private static boolean close(List<TupletGroup> open, int number, int last) {
        for (int i = open.size() - 1; i >= 0; i--) {
            TupletGroup group = open.get(i);
            if (group.mark.number() == number) {
                group.last = Math.max(group.first, Math.min(last, group.last));
                open.remove(i);
                return true;
            }
        }
        return false;
    }

    /** Puts every group into the smallest one around it. */
    private static void nest(TupletGroup whole, List<TupletGroup> sorted) {
        List<TupletGroup> around = new ArrayList<>(List.of(whole));
        for (TupletGroup group : sorted) {
            while (around.get(around.size() - 1).last < group.first) {
                around.remove(around.size() - 1);
            }
            TupletGroup outer = around.get(around.size() - 1);
            group.last = Math.min(group.last, outer.last);
            outer.inner.add(group);
            around.add(group);
        }
    }

    /** Works out the ratios of the groups in {@code outer}; brackets that change nothing are dropped. */
    private void settle(TupletGroup outer) {
        List<TupletGroup> kept = new ArrayList<>();
        for (TupletGroup group : outer.inner) {
            Ratio cumulative = cumulative(group, outer.cumulative);
            Ratio own = cumulative == null ? null : TupletGroup.between(outer.cumulative, cumulative);
            if (own != null && !own.isPlain()) {
                Ratio shown = group.mark.shownRatio();
                group.own = shown != null && shown.sameProportionAs(own) ? shown : own;
                group.cumulative = cumulative;
                settle(group);
                kept.add(group);
            }
        }
        outer.inner.clear();
        outer.inner.addAll(kept);
    }

    private Ratio cumulative(TupletGroup group, Ratio outer) {
        for (int index : group.direct(events)) {
            Ratio ratio = ratio(events.get(index));
            if (!ratio.isPlain()) {
                return ratio;
            }
        }
        boolean filled = !group.inner.isEmpty();
        return filled && group.mark.shownRatio() != null ? outer.times(group.mark.shownRatio()) : null;
    }

    /** Finds groups without brackets among the events that stand directly in {@code outer}, and in those groups. */
    private void infer(TupletGroup outer) {
        List<Integer> direct = outer.direct(events);
        int i = 0;
        while (i < direct.size()) {
            Ratio own = relative(direct.get(i), outer);
            if (own == null || own.isPlain() || events.get(direct.get(i)).written() == null) {
                i++;
                continue;
            }
            int end = endOfGroup(direct, i, outer, own);
            TupletGroup group = new TupletGroup(direct.get(i), direct.get(end), null);
            group.own = own;
            group.cumulative = ratio(events.get(direct.get(i)));
            outer.inner.add(group);
            i = end + 1;
        }
        outer.inner.sort(Comparator.comparingInt(g -> g.first));
        for (TupletGroup group : outer.inner) {
            infer(group);
        }
    }

    private Ratio relative(int index, TupletGroup outer) {
        return TupletGroup.between(outer.cumulative, ratio(events.get(index)));
    }

    /** Place in {@code direct} of the last event of the group that begins at {@code from}. */
    private int endOfGroup(List<Integer> direct, int from, TupletGroup outer, Ratio own) {
        Event opening = events.get(direct.get(from));
        Ratio cumulative = ratio(opening);
        Duration shortest = null;
        int alike = from;
        boolean mixed = false;
        for (int i = from; i < direct.size(); i++) {
            Event event = events.get(direct.get(i));
            boolean neighbour = i == from || direct.get(i) == direct.get(i - 1) + 1
                    || onlyGraceBetween(direct.get(i - 1), direct.get(i));
            Ratio ratio = ratio(event);
            boolean same = ratio.sameProportionAs(cumulative);
            boolean nested = !same && ratio.actual() % cumulative.actual() == 0
                    && ratio.normal() % cumulative.normal() == 0;
            if (!neighbour || event.written() == null || !same && !nested) {
                break;
            }
            mixed |= nested;
            if (!mixed) {
                alike = i;
            }
            if (same) {
                Duration value = event.written().value().length();
                shortest = shortest == null || value.isShorterThan(shortest) ? value : shortest;
            }
            Duration sum = event.end().minus(opening.start());
            if (fills(sum, opening.written(), shortest, own, outer.cumulative)) {
                return i;
            }
        }
        return alike;
    }

    private boolean onlyGraceBetween(int one, int two) {
        for (int i = one + 1; i < two; i++) {
            if (!events.get(i).isGrace()) {
                return false;
            }
        }
        return true;
    }

    /** Whether {@code sum} is the time of {@code own.normal()} notes of one value, the stated one where there is one. */
    static boolean fills(Duration sum, Written opening, Duration shortest, Ratio own, Ratio outer) {
        Duration plain = outer.undo(sum).dividedBy(own.normal());
        if (opening.normalValue() != null) {
            return plain.equals(opening.normalValue().dotted(opening.normalDots()));
        }
        return NoteValue.ofLength(plain) != null && !plain.isShorterThan(shortest);
    }
}
