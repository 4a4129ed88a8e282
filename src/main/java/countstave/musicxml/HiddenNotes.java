package countstave.musicxml;

import countstave.score.Event;
import countstave.score.Fact;
import countstave.score.Head;
import countstave.score.Look;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Settles what becomes of the notes of a bar that are not printed.
 *
 * <p>Mostly they help a program to play what is printed beside them: a trill written out, the strokes of a roll. So where
 * something printed stands on the staff at the moment a hidden note begins (a note or a rest, of its own voice or another),
 * the player does what is printed, and the hidden note becomes a hidden rest: it takes its time in its voice, and is
 * neither an attack nor given space. Where nothing printed stands, the hidden note is all that is known of the music.
 */
final class HiddenNotes {

    private final BarDraft bar;
    /** Of each staff: where printed things begin, and how far those that have begun by then reach. */
    private final Map<Integer, TreeMap<Offset, Offset>> shown = new HashMap<>();
    private int leftOut;
    private int headless;
    private int counted;
    private Offset first;

    private HiddenNotes(BarDraft bar) {
        this.bar = bar;
    }

    /** @param count whether all are read as notes, and only told */
    static void settle(BarDraft bar, boolean count, FactList facts) {
        if (!any(bar)) {
            return;
        }
        HiddenNotes found = new HiddenNotes(bar);
        if (!count) {
            found.look();
        }
        for (List<EventDraft> voice : bar.drafts.values()) {
            for (EventDraft event : voice) {
                if (takesTime(event)) {
                    found.settle(event, count);
                }
            }
        }
        if (found.first != null) {
            facts.add(new Fact.Hidden(facts.place(bar, null, found.first), found.leftOut, found.headless, found.counted));
        }
    }

    private static boolean any(BarDraft bar) {
        for (List<EventDraft> voice : bar.drafts.values()) {
            for (EventDraft event : voice) {
                for (Head head : event.heads) {
                    if (!head.printed() || head.shape().equals("none")) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private static boolean takesTime(EventDraft event) {
        return event.kind == Event.Kind.NOTE && event.grace == Event.Grace.NONE && !event.cue;
    }

    private static boolean isHidden(Head head) {
        return !head.printed() || head.shape().equals("none");
    }

    private static boolean isShown(EventDraft event) {
        return event.printed && event.grace == Event.Grace.NONE
                && (event.kind == Event.Kind.REST || !event.heads.stream().allMatch(HiddenNotes::isHidden));
    }

    private void look() {
        List<EventDraft> printed = new ArrayList<>();
        bar.drafts.values().forEach(voice -> voice.stream().filter(HiddenNotes::isShown).forEach(printed::add));
        printed.sort(Comparator.comparing(event -> event.start));
        for (EventDraft event : printed) {
            TreeMap<Offset, Offset> staff = shown.computeIfAbsent(event.staff, s -> new TreeMap<>());
            Offset reach = event.start.plus(event.length);
            Offset before = staff.isEmpty() ? reach : staff.lastEntry().getValue();
            staff.put(event.start, before.isAfter(reach) ? before : reach);
        }
    }

    private boolean isStoodFor(EventDraft event) {
        TreeMap<Offset, Offset> staff = shown.get(event.staff);
        Map.Entry<Offset, Offset> begun = staff == null ? null : staff.floorEntry(event.start);
        return begun != null && begun.getValue().isAfter(event.start);
    }

    private void settle(EventDraft event, boolean count) {
        int hidden = 0;
        int silent = 0;
        for (Head head : event.heads) {
            hidden += isHidden(head) ? 1 : 0;
            silent += isHidden(head) && head.silent() ? 1 : 0;
        }
        if (hidden == 0) {
            return;
        }
        first = first == null || event.start.isBefore(first) ? event.start : first;
        boolean whole = hidden == event.heads.size();
        if (count || whole && !isStoodFor(event)) {
            headless += silent;
            counted += hidden - silent;
            return;
        }
        leftOut += hidden;
        if (whole && !hasStem(event)) {
            leaveOut(event);
        } else {
            event.heads.replaceAll(head -> isHidden(head) ? head.silenced() : head);
        }
    }

    /** A stem without a head is seen: two voices that share a head are written so. */
    private static boolean hasStem(EventDraft event) {
        return event.printed && event.look.stem() != Look.Stem.NONE;
    }

    private static void leaveOut(EventDraft event) {
        event.kind = Event.Kind.REST;
        event.heads.clear();
        event.printed = false;
        // its beam may go on in printed notes, a word under it be printed, and a tremolo's ratio is no tuplet
        event.look = event.look.withoutNote();
    }
}
