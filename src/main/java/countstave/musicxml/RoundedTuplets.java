package countstave.musicxml;

import countstave.score.Meter;
import countstave.time.Duration;
import countstave.time.Proportion;
import countstave.time.TimeOverflowException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.audiveris.proxymusic.Attributes;
import org.audiveris.proxymusic.Backup;
import org.audiveris.proxymusic.Forward;
import org.audiveris.proxymusic.Note;

/**
 * Finds the tuplet notes of a bar whose durations differ from their written values by a division or more and are rounded
 * all the same.
 *
 * <p>Exporters round the unit of a tuplet and add it up: a quarter in 39:32 is eight times 49 divisions where 393.8 would
 * be right. Nothing in the note itself tells that from a note that lasts something else, but its group does, see
 * {@link TupletSum}: it is rounded note by note, and then either its durations add up to what is written, or the written
 * values fill the room there is (the meter, or what other voices last) and the durations do not.
 */
final class RoundedTuplets {

    private final List<BarElement> elements;
    private final Set<Note> found = Collections.newSetFromMap(new IdentityHashMap<>());
    private final List<Stretch> stretches = new ArrayList<>();
    private Meter meter;
    private Proportion divisions;
    private Stretch stretch = new Stretch(Duration.ZERO);
    private TupletSum group;

    /** What stands between two jumps: where it begins, what it lasts without the groups in doubt, and those groups. */
    private static final class Stretch {
        private final Duration from;
        private final List<TupletSum> doubtful = new ArrayList<>();
        private Duration file = Duration.ZERO;
        private Duration lasts = Duration.ZERO;

        Stretch(Duration from) {
            this.from = from;
        }

        Duration end() {
            return from.plus(lasts);
        }

        Duration endAsWritten() {
            Duration end = end();
            for (TupletSum sum : doubtful) {
                end = end.plus(sum.gain());
            }
            return end;
        }
    }

    private RoundedTuplets(List<BarElement> elements, Meter meter, Proportion divisions) {
        this.elements = elements;
        this.meter = meter;
        this.divisions = divisions;
    }

    /**
     * The notes of a bar that last what is written though their durations differ.
     *
     * @param meter in force before the bar
     * @param divisions of a quarter, in force before the bar
     */
    static Set<Note> find(List<BarElement> elements, Meter meter, Proportion divisions) {
        try {
            return new RoundedTuplets(elements, meter, divisions).find();
        } catch (TimeOverflowException e) {
            // whoever reads the bar meets the same durations, and knows where they stand
            return Set.of();
        }
    }

    private Set<Note> find() {
        if (!anyDiffers()) {
            return Set.of();
        }
        for (BarElement element : elements) {
            if (element.bound() instanceof Backup backup) {
                jump(backup.getDuration(), true);
            } else if (element.bound() instanceof Forward forward) {
                jump(forward.getDuration(), false);
            } else if (element.bound() instanceof Attributes attributes) {
                attributes(attributes);
            } else if (element.timedNote() != null) {
                note(element.timedNote());
            }
        }
        stretches.add(stretch);
        stretches.forEach(this::settle);
        return found;
    }

    /** Nearly all bars end here. */
    private boolean anyDiffers() {
        Proportion before = divisions;
        boolean any = false;
        for (BarElement element : elements) {
            if (element.bound() instanceof Attributes attributes) {
                divisions(attributes);
            }
            Note note = element.timedNote();
            any |= note != null && note.getTimeModification() != null && isUsable(note.getDuration())
                    && TupletSum.differs(note, length(note.getDuration()), division());
        }
        divisions = before;
        return any;
    }

    private static boolean isUsable(BigDecimal number) {
        return number != null && number.signum() > 0;
    }

    private Duration length(BigDecimal number) {
        return Duration.QUARTER.times(Rationals.of(number)).dividedBy(divisions);
    }

    private Duration division() {
        return Duration.QUARTER.dividedBy(divisions);
    }

    private void attributes(Attributes attributes) {
        divisions(attributes);
        Meter read = attributes.getTime().isEmpty() || stretches.size() > 0 || stretch.file.isPositive() ? null
                : MeterReader.meter(attributes.getTime().get(0));
        meter = read == null ? meter : read;
    }

    private void divisions(Attributes attributes) {
        if (isUsable(attributes.getDivisions())) {
            divisions = Rationals.of(attributes.getDivisions());
        }
    }

    private void jump(BigDecimal number, boolean back) {
        Duration length = isUsable(number) ? length(number) : Duration.ZERO;
        stretches.add(stretch);
        Duration here = stretch.from.plus(stretch.file);
        Duration aim = back ? here.minus(length) : here.plus(length);
        stretch = new Stretch(aim.isNegative() ? Duration.ZERO : aim);
        group = null;
    }

    private void note(Note note) {
        if (!isUsable(note.getDuration())) {
            group = null;
            return;
        }
        Duration sounding = length(note.getDuration());
        Duration written = TupletSum.written(note, sounding, division());
        stretch.file = stretch.file.plus(sounding);
        stretch.lasts = stretch.lasts.plus(written == null ? sounding : written);
        if (group == null || !group.takes(note)) {
            group = TupletSum.startingWith(note, division());
        }
        if (group == null) {
            return;
        }
        group.add(note, sounding);
        if (group.isComplete()) {
            if (group.gain() != null && group.isRoundedNoteByNote()) {
                if (group.addsUp()) {
                    accept(group);
                    stretch.lasts = stretch.lasts.plus(group.gain());
                } else {
                    stretch.doubtful.add(group);
                }
            }
            group = null;
        }
    }

    private void accept(TupletSum sum) {
        found.addAll(sum.notes());
    }

    private void settle(Stretch own) {
        if (!own.doubtful.isEmpty() && isRoom(own.endAsWritten(), own) && !isRoom(own.end(), own)) {
            own.doubtful.forEach(this::accept);
        }
    }

    /** Whether {@code end} is where the meter, or a stretch that is not in doubt, ends; to within one division. */
    private boolean isRoom(Duration end, Stretch own) {
        if (!meter.isSenzaMisura() && isNear(end, meter.length())) {
            return true;
        }
        for (Stretch other : stretches) {
            if (other != own && other.doubtful.isEmpty() && other.lasts.isPositive() && isNear(end, other.end())) {
                return true;
            }
        }
        return false;
    }

    private boolean isNear(Duration one, Duration other) {
        return one.minus(other).abs().isShorterThan(division());
    }
}
