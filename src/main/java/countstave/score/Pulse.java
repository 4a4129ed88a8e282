package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * The counted beats of a bar.
 *
 * <p>n/4 counts quarters, n/2 halves; n/8 and n/16 with n = 6, 9, 12, 15 … the dotted value, or the written unit in groups
 * of 3 where the tempo is marked so and slow (♪ below 120); any other n/8 or n/16, and those where the music shows other
 * groups than threes ({@link PartGroups}), the written unit in groups; 3/8 three eighths, or one dotted quarter from
 * ♪ = 180 up; senza misura quarters (common practice, no source).
 *
 * @param beats the beats that sound in the bar
 * @param irregular whether they are written units in groups
 */
public record Pulse(List<Beat> beats, boolean irregular) {

    /** The unit of 3/8 (or 3/16) goes by one to the bar from this many a minute up; common practice, no source. */
    private static final double ONE_TO_THE_BAR = 180.0 / 60;

    /**
     * A compound meter whose tempo is marked in the written unit is counted in it below this many a minute: the dotted beat
     * would be slower than 40, where metronomes begin (common practice; the figure from memory).
     */
    private static final double DOTTED_BEAT = 3 * 40.0 / 60;

    /** A beat of the full bar before it is placed: length, and the size of the group it belongs to. */
    private record Planned(Duration length, int group, Offset groupStart, Duration groupLength) {
    }

    /**
     * The beats of {@code bar} at {@code tempo}. They cover the bar: in an over-full bar they go on beyond the meter;
     * in a pickup they are the last ones of the full bar. The groups are what this bar alone shows.
     */
    public static Pulse of(Bar bar, Tempo tempo, PulseChoice choice) {
        return of(bar, tempo, choice, PartGroups.alone(bar));
    }

    /** As above. {@code shown}: the groups of each component of the meter, in units, as {@link PartGroups} has them. */
    static Pulse of(Bar bar, Tempo tempo, PulseChoice choice, List<List<Integer>> shown) {
        List<Planned> full = new ArrayList<>();
        boolean irregular = false;
        Offset start = Offset.ZERO;
        int group = 0;
        List<Meter.Component> components = bar.meter().components();
        for (int i = 0; i < components.size(); i++) {
            Meter.Component component = components.get(i);
            boolean units = choice.kind() != PulseChoice.Kind.VALUE
                    && isIrregular(bar.meter(), component, tempo, shown.get(i));
            List<Duration> groups = units ? lengths(component, shown.get(i)) : List.of(component.length());
            Duration beat = units ? Duration.of(1, component.unit()) : beat(bar.meter(), component, tempo, choice);
            if (!units && component.isAdditive() && choice.kind() != PulseChoice.Kind.VALUE) {
                groups = lengths(component, component.numbers());
            }
            boolean grouped = units || groups.size() > 1;
            irregular |= units && choice.kind() == PulseChoice.Kind.METER;
            for (Duration length : groups) {
                if (units && choice.kind() == PulseChoice.Kind.GROUPS) {
                    full.add(new Planned(length, group++, start, length));
                } else {
                    group = addBeats(full, beat, length, grouped, group, start);
                }
                start = start.plus(length);
            }
        }
        return new Pulse(place(full, bar, choice), irregular);
    }

    private static int addBeats(List<Planned> full, Duration beat, Duration length, boolean grouped, int group,
            Offset start) {
        int next = group;
        for (Duration done = Duration.ZERO; done.isShorterThan(length); done = done.plus(beat)) {
            if (grouped) {
                full.add(new Planned(beat, next, start, length));
            } else {
                full.add(new Planned(beat, next++, start.plus(done), beat));
            }
        }
        return grouped ? next + 1 : next;
    }

    private static List<Duration> lengths(Meter.Component component, List<Integer> groups) {
        return groups.stream().map(n -> Duration.of(n, component.unit())).toList();
    }

    /** Whether the written unit itself is counted, in groups. */
    private static boolean isIrregular(Meter meter, Meter.Component component, Tempo tempo, List<Integer> groups) {
        if (component.unit() < 8) {
            return false;
        }
        if (!Grouping.isCompound(component)) {
            return !isOneToTheBar(meter, component, tempo);
        }
        return isSlow(component, tempo) || groups.stream().anyMatch(n -> n % 3 != 0);
    }

    /** Whether the mark itself counts the written unit, too slowly to beat three of them as one. */
    private static boolean isSlow(Meter.Component component, Tempo tempo) {
        Duration unit = Duration.of(1, component.unit());
        return tempo.unit().equals(unit) && tempo.rate(unit) < DOTTED_BEAT;
    }

    private static boolean isOneToTheBar(Meter meter, Meter.Component component, Tempo tempo) {
        return meter.components().size() == 1 && component.sum() == 3 && !component.isAdditive()
                && component.unit() >= 8 && tempo.rate(Duration.of(1, component.unit())) >= ONE_TO_THE_BAR;
    }

    private static Duration beat(Meter meter, Meter.Component component, Tempo tempo, PulseChoice choice) {
        if (choice.kind() == PulseChoice.Kind.VALUE) {
            return choice.value();
        }
        boolean dotted = Grouping.isCompound(component) || isOneToTheBar(meter, component, tempo);
        return Duration.of(dotted ? 3 : 1, component.unit());
    }

    /** Puts the beats of the full bar where the bar's own start and end cut them. */
    private static List<Beat> place(List<Planned> full, Bar bar, PulseChoice choice) {
        List<Beat> beats = new ArrayList<>();
        Duration phase = bar.phase();
        Offset at = Offset.ZERO.minus(phase);
        int number = 1;
        for (Planned planned : full) {
            Offset end = at.plus(planned.length);
            if (end.isAfter(Offset.ZERO) && at.isBefore(bar.end())) {
                beats.add(new Beat(number, at, planned.length, planned.group, planned.groupStart.minus(phase),
                        planned.groupLength));
            }
            at = end;
            number++;
        }
        // an over-full bar, or senza misura: the last beat's length goes on
        Duration length = full.isEmpty() ? choice.kind() == PulseChoice.Kind.VALUE ? choice.value() : Duration.QUARTER
                : full.get(full.size() - 1).length;
        int group = full.isEmpty() ? 0 : full.get(full.size() - 1).group + 1;
        while (at.isBefore(bar.end()) || beats.isEmpty()) {
            if (at.plus(length).isAfter(Offset.ZERO)) {
                beats.add(new Beat(number, at, length, group++, at, length));
            }
            number++;
            at = at.plus(length);
        }
        return List.copyOf(beats);
    }
}
