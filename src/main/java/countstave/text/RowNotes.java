package countstave.text;

import countstave.score.BarTimeline;
import countstave.score.Event;
import countstave.score.Head;
import countstave.score.Voice;
import countstave.score.VoiceAttacks;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;

/** What one row shows of a bar: where its notes begin, and where pitched ones are held. */
final class RowNotes {

    private final List<Offset> attacks;
    private final List<Event> sounding;
    private int next;
    private Offset soundsUntil = Offset.ZERO;

    RowNotes(BarTimeline bar, NoteRow row) {
        this.attacks = row.label().isEmpty() ? bar.attacks() : attacks(bar, row);
        this.sounding = sounding(bar, row);
    }

    private static List<Offset> attacks(BarTimeline bar, NoteRow row) {
        TreeSet<Offset> attacks = new TreeSet<>();
        for (VoiceAttacks line : bar.lines()) {
            if (row.takes(line.voice(), line.staff())) {
                attacks.addAll(line.attacks());
            }
        }
        return new ArrayList<>(attacks);
    }

    /** Pitched notes of the row, in order of time: drums are struck, not held. */
    private static List<Event> sounding(BarTimeline bar, NoteRow row) {
        List<Offset> counted = bar.swung() == null ? bar.attacks() : bar.swung().written();
        List<Event> notes = new ArrayList<>();
        for (Voice voice : bar.bar().voices()) {
            for (Event event : voice.events()) {
                if (isHeldNote(event) && row.takes(voice.name(), event.staff())
                        && (!event.isAttack() || Collections.binarySearch(counted, event.start()) >= 0)) {
                    notes.add(event);
                }
            }
        }
        if (notes.size() > 1) {
            notes.sort(Comparator.comparing(Event::start));
        }
        return notes;
    }

    private static boolean isHeldNote(Event event) {
        if (event.isNote() && !event.isGrace() && !event.cue()) {
            for (Head head : event.heads()) {
                if (!head.pitch().unpitched() && !head.silent()) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Whether nothing of it begins or sounds in this bar. */
    boolean isEmpty() {
        return attacks.isEmpty() && sounding.isEmpty();
    }

    /** What the row shows at this position; to be asked in order of time. */
    Cell.Note at(Offset at) {
        while (next < sounding.size() && !sounding.get(next).start().isAfter(at)) {
            Offset end = sounding.get(next++).end();
            soundsUntil = end.isAfter(soundsUntil) ? end : soundsUntil;
        }
        return begins(at) ? Cell.Note.BEGINS : at.isBefore(soundsUntil) ? Cell.Note.HELD : Cell.Note.NONE;
    }

    boolean begins(Offset at) {
        return Collections.binarySearch(attacks, at) >= 0;
    }
}
