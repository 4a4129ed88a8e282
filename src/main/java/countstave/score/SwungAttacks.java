package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Makes a bar sound long–short: from the attacks as they are written to where they are heard.
 *
 * <p>Pair by pair, counted from the start of each beat, and voice by voice: where a voice has nothing inside the pair but
 * its second note, or nothing but the short note of a dotted pair (a dotted eighth and a 16th), that note sounds at the
 * swung place. Everything else stays as written: triplets and other tuplets, ornaments, and real 16ths (straight double
 * time), which keep the other voices of that pair straight too. Common practice, no source.
 */
final class SwungAttacks {

    private final BarTimeline written;
    private final Swing running;
    private final List<SwingChange> changes;
    private final Swing swing;
    /** For each voice, where its tuplets begin, and how far they and those before them reach. */
    private final Map<String, TreeMap<Offset, Offset>> tuplets = new HashMap<>();

    private SwungAttacks(BarTimeline written, Swing running, List<SwingChange> changes) {
        this.written = written;
        this.running = running;
        this.changes = changes;
        this.swing = ofBar();
        for (Tuplet tuplet : written.tuplets()) {
            tuplets.computeIfAbsent(tuplet.events().voice(), v -> new TreeMap<>()).merge(tuplet.start(), tuplet.end(),
                    SwungAttacks::later);
        }
        for (TreeMap<Offset, Offset> voice : tuplets.values()) {
            Offset reached = Offset.ZERO;
            for (Map.Entry<Offset, Offset> tuplet : voice.entrySet()) {
                reached = later(reached, tuplet.getValue());
                tuplet.setValue(reached);
            }
        }
    }

    /**
     * The bar as it sounds.
     *
     * @param written the bar with the attacks as they are written
     * @param running the swing in force at its start
     * @param changes where it changes in the bar. A second ratio or unit in one bar waits for the next bar
     */
    static BarTimeline of(BarTimeline written, Swing running, List<SwingChange> changes) {
        if (running.isStraight() && changes.isEmpty()) {
            return written;
        }
        SwungAttacks attacks = new SwungAttacks(written, running, changes);
        return attacks.swing == null ? written : attacks.sounding();
    }

    private static Offset later(Offset one, Offset two) {
        return one.isAfter(two) ? one : two;
    }

    /** The first swing that is in force for a pair of the bar, or null. */
    private Swing ofBar() {
        for (Beat beat : written.beats()) {
            Swing atStart = inForce(beat.start());
            if (fits(atStart, beat)) {
                return atStart;
            }
            for (SwingChange change : changes) {
                Swing swing = change.swing();
                if (change.at().isAfter(beat.start()) && fits(swing, beat)
                        && !change.at().isAfter(beat.end().minus(swing.pair()))) {
                    return swing;
                }
            }
        }
        return null;
    }

    private static boolean fits(Swing swing, Beat beat) {
        return !swing.isStraight() && swing.fits(beat);
    }

    private Swing inForce(Offset at) {
        Offset inBar = at.isBefore(Offset.ZERO) ? Offset.ZERO : at;
        Swing found = running;
        for (SwingChange change : changes) {
            if (change.at().isAfter(inBar)) {
                break;
            }
            found = change.swing();
        }
        return found;
    }

    private BarTimeline sounding() {
        List<VoiceAttacks> lines = new ArrayList<>(written.lines().size());
        TreeSet<Offset> all = new TreeSet<>();
        for (VoiceAttacks line : written.lines()) {
            TreeSet<Offset> own = new TreeSet<>();
            for (Offset at : line.attacks()) {
                own.add(sounds(line, at));
            }
            lines.add(new VoiceAttacks(line.staff(), line.voice(), List.copyOf(own)));
            all.addAll(own);
        }
        Swung swung = new Swung(swing.unit(), swing.longPart(), swing.shortPart(), written.attacks());
        return new BarTimeline(written.bar(), written.beats(), written.irregular(), List.copyOf(all), List.copyOf(lines),
                written.tuplets(), written.tempi(), swung);
    }

    private Offset sounds(VoiceAttacks line, Offset at) {
        Beat beat = written.beatAt(at);
        if (!swing.fits(beat) || !at.isBefore(beat.end())) {
            return at;
        }
        Offset start = swing.pairStart(beat, at);
        Offset second = start.plus(swing.second());
        if (at.equals(start) || !isPair(line, start) || inForce(start).isStraight() || isDoubleTime(start)
                || !second.isWithin(Offset.ZERO, written.bar().end())) {
            return at;
        }
        return second;
    }

    /** Whether the voice has one note inside the pair, and that one is the short one. */
    private boolean isPair(VoiceAttacks line, Offset start) {
        List<Offset> inside = inside(line, start);
        if (inside.size() != 1 || isInTuplet(line, inside.get(0))) {
            return false;
        }
        Duration into = inside.get(0).minus(start);
        return into.equals(swing.unit()) || into.equals(dotted());
    }

    /** Where the short note of a dotted pair is written. */
    private Duration dotted() {
        return swing.unit().times(3, 2);
    }

    private boolean isInTuplet(VoiceAttacks line, Offset at) {
        TreeMap<Offset, Offset> own = tuplets.get(line.voice());
        Map.Entry<Offset, Offset> last = own == null ? null : own.floorEntry(at);
        return last != null && at.isBefore(last.getValue());
    }

    /** Whether a voice plays the first half of the pair in halves, or its second note and more: 16ths of its own speed. */
    private boolean isDoubleTime(Offset start) {
        Duration half = swing.unit().dividedBy(2);
        for (VoiceAttacks line : written.lines()) {
            List<Offset> inside = inside(line, start);
            boolean plain = true;
            boolean straight = false;
            for (Offset at : inside) {
                Duration into = at.minus(start);
                plain &= Long.bitCount(into.over(swing.pair()).denominator()) == 1 && !isInTuplet(line, at);
                straight |= into.equals(half) || into.equals(swing.unit()) && inside.size() > 1;
            }
            if (plain && straight) {
                return true;
            }
        }
        return false;
    }

    private List<Offset> inside(VoiceAttacks line, Offset start) {
        return BarTimeline.between(line.attacks(), start, start.plus(swing.pair()));
    }
}
