package countstave.spelling;

import countstave.score.Event;
import countstave.score.TupletMark;
import countstave.score.Voice;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;

/**
 * A tuplet bracket as the file writes it: a start mark and the stop mark that belongs to it.
 *
 * @param bar bar of the start, or of a stop that no start belongs to
 * @param voice name of the voice
 * @param start the start mark, or null for a stop without one
 * @param stopped whether a stop belongs to it
 * @param outer the bracket around it, or null
 * @param events what stands in it, grace notes left out; of an unmatched mark, the event it stands on
 */
public record Bracket(BarView bar, String voice, TupletMark start, boolean stopped, Bracket outer,
        List<Event> events) {

    public boolean isMatched() {
        return start != null && stopped;
    }

    /** Whether this bracket begins inside {@code other}. */
    public boolean isInside(Bracket other) {
        return outer != null && outer.events == other.events;
    }

    /** Every bracket of a part in the order of its end, unmatched marks among them. */
    public static List<Bracket> of(PartView part) {
        Scan scan = new Scan();
        for (BarView bar : part.bars()) {
            scan.bar(bar);
        }
        scan.giveUp(bracket -> true);
        return scan.found;
    }

    private static final class Scan {

        private final List<Bracket> found = new ArrayList<>();
        private final Map<String, List<Bracket>> open = new HashMap<>();

        void bar(BarView bar) {
            for (Voice voice : bar.bar().voices()) {
                List<Bracket> here = open.computeIfAbsent(voice.name(), v -> new ArrayList<>());
                voice.events().forEach(event -> event(bar, voice.name(), here, event));
            }
            // a bracket may reach over one barline, but not through a whole bar more
            giveUp(bracket -> bracket.bar.bar().index() < bar.bar().index());
        }

        private void event(BarView bar, String voice, List<Bracket> here, Event event) {
            boolean stopFirst = !event.tupletMarks().isEmpty() && !event.tupletMarks().get(0).start();
            for (TupletMark mark : event.tupletMarks()) {
                if (mark.start()) {
                    // the number tells nested brackets apart, so a second start means that the first never stopped
                    boolean continues = stopFirst && event.tupletMarks().stream().anyMatch(m -> !m.start());
                    if (!continues) {
                        drop(here, mark.number());
                    }
                    Bracket outer = here.isEmpty() ? null : here.get(here.size() - 1);
                    here.add(new Bracket(bar, voice, mark, false, outer, new ArrayList<>()));
                }
            }
            if (!event.isGrace()) {
                here.forEach(bracket -> bracket.events.add(event));
            }
            for (TupletMark mark : event.tupletMarks()) {
                if (!mark.start()) {
                    stop(bar, voice, here, mark, event);
                }
            }
        }

        private void drop(List<Bracket> here, int number) {
            here.stream().filter(b -> b.start.number() == number).forEach(found::add);
            here.removeIf(b -> b.start.number() == number);
        }

        private void stop(BarView bar, String voice, List<Bracket> here, TupletMark mark, Event event) {
            for (Bracket bracket : here) {
                if (bracket.start.number() == mark.number()) {
                    here.remove(bracket);
                    found.add(new Bracket(bracket.bar, voice, bracket.start, true, bracket.outer, bracket.events));
                    return;
                }
            }
            found.add(new Bracket(bar, voice, null, true, null, List.of(event)));
        }

        void giveUp(java.util.function.Predicate<Bracket> hopeless) {
            for (List<Bracket> here : open.values()) {
                for (Iterator<Bracket> each = here.iterator(); each.hasNext();) {
                    Bracket bracket = each.next();
                    if (hopeless.test(bracket)) {
                        each.remove();
                        found.add(bracket);
                    }
                }
            }
        }
    }
}
