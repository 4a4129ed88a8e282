package countstave.musicxml;

import countstave.score.Tempo;
import countstave.score.TempoChange;
import countstave.time.Duration;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The tempi of the whole score: whichever part a mark stands in, it holds for all.
 */
final class TempoMap {

    /** How far what is played may lie from what a mark says and still be the same tempo, written with fewer digits. */
    private static final double SAME = 0.006;

    private final List<TreeMap<Offset, TempoMark>> bars = new ArrayList<>();

    /** Notes a mark in the bar with this index; of several at one place the weightiest counts, of equals the first. */
    void add(int bar, TempoMark mark) {
        if (mark == null) {
            return;
        }
        while (bars.size() <= bar) {
            bars.add(new TreeMap<>());
        }
        bars.get(bar).merge(mark.at(), mark, TempoMap::join);
    }

    private static TempoMark join(TempoMark one, TempoMark two) {
        TempoMark first = one.kind().compareTo(two.kind()) >= 0 ? one : two;
        TempoMark second = first == one ? two : one;
        // dotted quarter = 60 and 90 quarters a minute say the same: keep the unit of the mark, printed or not
        if (first.kind() == TempoMark.Kind.SOUND && second.kind() == TempoMark.Kind.HIDDEN) {
            double played = first.tempo().seconds(Duration.WHOLE);
            double marked = second.tempo().seconds(Duration.WHOLE);
            if (Math.abs(played / marked - 1) < SAME) {
                return new TempoMark(first.at(), TempoMark.Kind.SOUND, second.tempo(), null, null);
            }
        }
        return first;
    }

    /** For every bar that has any, its changes in order of time. */
    List<List<TempoChange>> resolve() {
        List<List<TempoChange>> resolved = new ArrayList<>();
        Tempo running = null;
        for (Map<Offset, TempoMark> bar : bars) {
            List<TempoChange> changes = new ArrayList<>();
            for (TempoMark mark : bar.values()) {
                if (mark.kind() == TempoMark.Kind.MODULATION) {
                    if (running == null) {
                        // nothing to relate to: the relation still holds from the tempo that is assumed
                        running = Tempo.ASSUMED;
                        (resolved.isEmpty() ? changes : firstOf(resolved)).add(0,
                                new TempoChange(Offset.ZERO, running));
                    }
                    running = modulated(running, mark);
                } else {
                    running = mark.tempo();
                }
                changes.add(new TempoChange(mark.at(), running));
            }
            resolved.add(changes);
        }
        resolved.replaceAll(List::copyOf);
        return resolved;
    }

    private static List<TempoChange> firstOf(List<List<TempoChange>> resolved) {
        return resolved.get(0);
    }

    /** The new value takes over the old value's number a minute. */
    private static Tempo modulated(Tempo old, TempoMark mark) {
        BigDecimal perMinute = old.perMinute(mark.from()).stripTrailingZeros();
        return new Tempo(mark.to(), perMinute.scale() < 0 ? perMinute.setScale(0) : perMinute);
    }
}
