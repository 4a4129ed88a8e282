package countstave.spelling;

import countstave.score.Event;
import countstave.score.Head;
import countstave.score.Voice;
import countstave.spelling.respell.Respeller;
import countstave.spelling.respell.Sound;
import countstave.spelling.respell.MeterFrame;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/** What sounds in a stretch of a voice: tied notes as one sound, neighbouring rests as one silence. */
public final class Sounds {

    private Sounds() {
    }

    /** The sounds from {@code from} to {@code to}; null where the voice has gaps, overlaps or cue notes there. */
    public static List<Sound> of(Voice voice, Offset from, Offset to) {
        List<Sound> sounds = new ArrayList<>();
        Offset at = from;
        Event before = null;
        for (Event event : BarView.timed(voice)) {
            boolean outside = !event.end().isAfter(from) || !event.start().isBefore(to);
            if (outside || !event.length().isPositive()) {
                continue;
            }
            Offset start = event.start().isBefore(from) ? from : event.start();
            Offset end = event.end().isAfter(to) ? to : event.end();
            if (!start.equals(at) || event.cue()) {
                return null;
            }
            boolean joins = before != null && (event.isRest() && before.isRest() || isHeld(event) && before.isNote());
            Offset first = joins ? sounds.remove(sounds.size() - 1).start() : start;
            boolean held = event.isNote() && (leadsOn(event) || event.end().isAfter(to));
            sounds.add(new Sound(first, end, event.isRest(), held));
            at = end;
            before = event;
        }
        return at.equals(to) ? sounds : null;
    }

    /** The stretch spelled anew by the meter; null where that cannot be done, or where it would cut a note in two. */
    public static Suggestion respell(MeterFrame frame, Voice voice, Offset from, Offset to) {
        List<Sound> sounds = of(voice, from, to);
        boolean cuts = BarView.timed(voice).stream().anyMatch(e -> isInside(from, e) || isInside(to, e));
        if (sounds == null || sounds.isEmpty() || cuts) {
            return null;
        }
        return Respeller.spell(frame, sounds).map(items -> new Suggestion(from, to, items)).orElse(null);
    }

    /** One event spelled anew by the meter, held on if a tie leads out of it; null where that cannot be done. */
    public static Suggestion respell(MeterFrame frame, Event event) {
        Sound sound = new Sound(event.start(), event.end(), event.isRest(), event.isNote() && leadsOn(event));
        return Respeller.spell(frame, List.of(sound))
                .map(items -> new Suggestion(event.start(), event.end(), items)).orElse(null);
    }

    /** Whether nothing begins to sound here: every head is held by a tie. */
    public static boolean isHeld(Event event) {
        return event.isNote() && !event.heads().isEmpty() && event.heads().stream().allMatch(Head::tieStop);
    }

    private static boolean isInside(Offset at, Event event) {
        return at.isAfter(event.start()) && at.isBefore(event.end());
    }

    private static boolean leadsOn(Event event) {
        return event.heads().stream().anyMatch(Head::tieStart);
    }
}
