package countstave.grid;

import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.ScoreException;
import countstave.score.Tempo;
import countstave.score.Tuplet;
import countstave.score.VoiceAttacks;
import countstave.time.Divisors;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * One beat and the grids on which it can be counted: which of its notes lie on the words of a division, and what it
 * costs to feel the others.
 *
 * <p>Places in the beat are whole <em>ticks</em>: the beat has as many as the least common multiple of all places asks
 * for, so that all of this is arithmetic of small whole numbers.
 */
final class BeatGrids {

    /** Finer than any notation; a beat that needs more is a file of raw times, not of note values. */
    static final int LARGEST_DIVISION = 20_160;

    /** From this share of the voice limit on, in thousandths, a grid is too fast to be worth saying. */
    static final long UNSAYABLE = 1250;
    /** From here on nobody says it, whatever it costs. */
    static final long BEYOND_WORDS = 1600;
    /** Up to here a doubling finer than a 16th is said rather than felt. */
    static final long EASY = 750;

    /** Into how many parts the time between two words is cut in the mind; fives and sevens are no doublings. */
    private static final Set<Integer> CUTS = Set.of(2, 3, 4, 6, 8);

    /** Not possible: the note would be lost. */
    static final long LOST = -1;

    private final BarTimeline bar;
    private final Beat beat;
    private final Tempo tempo;
    private final Units units;
    private final PlanOptions options;
    private final int ticks;
    private final int division;
    /** The finest division that everybody drills: quarters of a plain beat, thirds of a dotted one. */
    private final int ordinary;
    private final boolean[] attack;
    private final List<boolean[]> lines = new ArrayList<>();

    /**
     * @param places whatever else needs a tick: cuts inside the beat
     * @param leadsOn whether the next bar begins with a note
     * @throws ScoreException if the notes fit no grid that could be counted
     */
    BeatGrids(BarTimeline bar, Beat beat, List<Offset> places, boolean leadsOn, Units units, PlanOptions options) {
        this.bar = bar;
        this.beat = beat;
        this.ordinary = beat.length().numerator() == 3 ? 3 : 4;
        this.tempo = bar.tempoAt(beat.start().isBefore(Offset.ZERO) ? Offset.ZERO : beat.start());
        this.units = units;
        this.options = options;
        Offset start = beat.start();
        Offset end = beat.end();
        // a bar that begins or ends inside the beat begins and ends on a word too
        this.division = together(parts(start, end, List.of(Offset.ZERO, bar.bar().end())), parts(start, end, bar.attacks()));
        this.ticks = together(division, parts(start, end, places));
        this.attack = ticks(bar.attacks());
        this.attack[ticks] |= leadsOn && !beat.end().isBefore(bar.bar().end());
        for (VoiceAttacks line : bar.lines()) {
            lines.add(ticks(line.attacks()));
        }
    }

    private int parts(Offset start, Offset end, List<Offset> positions) {
        return countable(CoveringGrid.parts(start, end, positions, LARGEST_DIVISION));
    }

    private int together(long a, long b) {
        return countable(Divisors.lcmWithin(LARGEST_DIVISION, a, b));
    }

    private int countable(long parts) {
        if (parts == 0) {
            throw new ScoreException("bar " + bar.bar().called() + ": the notes of a beat fit no grid of up to "
                    + LARGEST_DIVISION + " parts, so nothing can be counted there;"
                    + " write them as note values and tuplets, or leave the bar out with --bars");
        }
        return (int) parts;
    }

    /** Which ticks of the beat, its end included, are among these moments. */
    private boolean[] ticks(List<Offset> moments) {
        boolean[] found = new boolean[ticks + 1];
        for (Offset at : moments) {
            if (!at.isBefore(beat.start()) && !at.isAfter(beat.end())) {
                found[tick(at)] = true;
            }
        }
        return found;
    }

    /** The tick of a cut or note of the beat; its end is the last tick plus one. */
    int tick(Offset at) {
        Proportion share = at.minus(beat.start()).over(beat.length());
        return Math.toIntExact(share.numerator() * (ticks / share.denominator()));
    }

    /** The coarsest division on which all its notes lie: the {@link CoveringGrid} of the beat. */
    int division() {
        return division;
    }

    /** Whether a dotted beat is not cut in {@code d} for the sake of these notes: twos are no part of its threes. */
    boolean isForeign(int d) {
        if (ordinary != 3 || d == 1 || d % 3 == 0 || d == division) {
            return false;
        }
        for (boolean[] line : lines) {
            int own = division(line);
            if (own % 3 != 0 && own % d == 0) {
                return false;
            }
        }
        return true;
    }

    /** The coarsest divisions on which the notes of each voice lie. */
    List<Integer> lineDivisions() {
        List<Integer> divisions = new ArrayList<>(lines.size());
        for (boolean[] line : lines) {
            divisions.add(division(line));
        }
        return divisions;
    }

    private int division(boolean[] line) {
        long grid = ticks;
        for (int t = 0; t < ticks; t++) {
            grid = line[t] ? Divisors.gcd(grid, t) : grid;
        }
        return (int) (ticks / grid);
    }

    /** Whether a word of the division {@code d} stands at this tick. */
    boolean isSaid(int tick, int d) {
        return (long) tick * d % ticks == 0;
    }

    /** How many words of the division {@code d} stand from one tick to before another. */
    int words(int from, int to, int d) {
        return (int) (ceil((long) to * d) - ceil((long) from * d));
    }

    private long ceil(long parts) {
        return (parts + ticks - 1) / ticks;
    }

    boolean isAttack(int tick) {
        return attack[tick];
    }

    Tempo tempo() {
        return tempo;
    }

    /** How fast the beat is in {@code parts}, in thousandths of the voice limit. */
    private long speed(long parts) {
        return units.speed(beat.length().dividedBy(parts), tempo);
    }

    /**
     * What it costs to feel the note at {@code tick} while the division {@code d} is said.
     *
     * @param tick of an attack that is on no word of {@code d}
     * @return the cost in thousandths, or {@link #LOST} where it has to be said
     */
    long feel(int tick, int d) {
        if (!options.felt()) {
            return LOST;
        }
        if (options.against() && speed(division) > UNSAYABLE && isAgainst(tick, d)) {
            return options.weights().feltAgainst();
        }
        Tuplet tuplet = tupletAround(tick);
        if (tuplet != null && !goesWith(tuplet, d)) {
            return LOST;
        }
        long doubling = doubling(tick, d, tuplet != null);
        return doubling == LOST && tuplet != null && isBeyondWords(tuplet) ? options.weights().feltBeyond() : doubling;
    }

    /** Whether a tuplet begins and ends on words of {@code d}, and all words inside it fall on its own grid. */
    private boolean goesWith(Tuplet tuplet, int d) {
        if (!isSaid(tick(tuplet.start()), d) || !isSaid(tick(tuplet.end()), d)) {
            return false;
        }
        Duration word = beat.length().dividedBy(d);
        for (Offset at = tuplet.start().plus(word); at.isBefore(tuplet.end()); at = at.plus(word)) {
            if (!at.minus(tuplet.start()).isMultipleOf(tuplet.unit())) {
                return false;
            }
        }
        return true;
    }

    /** The shortest tuplet inside this beat among whose notes the one at {@code tick} can be, not being its first. */
    private Tuplet tupletAround(int tick) {
        Offset at = beat.start().plus(beat.length().times(tick, ticks));
        Tuplet found = null;
        for (Tuplet tuplet : bar.tuplets()) {
            if (tuplet.start().isBefore(at) && tuplet.end().isAfter(at) && !tuplet.start().isBefore(beat.start())
                    && !tuplet.end().isAfter(beat.end()) && at.minus(tuplet.start()).isMultipleOf(tuplet.unit())
                    && (found == null || tuplet.length().isShorterThan(found.length()))) {
                found = tuplet;
            }
        }
        return found;
    }

    /** Fives, sevens, elevens … that are too fast for any voice. */
    private boolean isBeyondWords(Tuplet tuplet) {
        int actual = tuplet.ratio().actual();
        return actual / Integer.lowestOneBit(actual) > 3 && units.speed(tuplet.unit(), tempo) > BEYOND_WORDS;
    }

    /**
     * Halves, thirds, quarters … of the distance between two words, the first of which is played; the second is enough for
     * halves, and for a tuplet that begins with a rest.
     */
    private long doubling(int tick, int d, boolean inTuplet) {
        long scaled = (long) tick * d;
        int before = (int) (scaled / ticks);
        int parts = (int) (ticks / Divisors.gcd(scaled % ticks, ticks));
        if (!CUTS.contains(parts) || !isOfItsFamily(tick, d)) {
            return LOST;
        }
        boolean led = isPlayed(before, d);
        if (!led && !((parts == 2 || inTuplet) && isPlayed(before + 1, d))) {
            return LOST;
        }
        long full = speed((long) d * parts);
        long cost = parts == 2 ? options.weights().felt()
                : led ? options.weights().feltThird() : 2 * options.weights().feltThird();
        if (full > UNSAYABLE) {
            return cost;
        }
        boolean fine = (long) d * parts > ordinary && full > EASY && (led || parts == 2);
        return fine ? cost + options.weights().feltThoughSayable() : LOST;
    }

    /** Whether a voice that has the note at {@code tick} divides the beat in a multiple of {@code d}. */
    private boolean isOfItsFamily(int tick, int d) {
        for (boolean[] line : lines) {
            if (line[tick] && division(line) % d == 0) {
                return true;
            }
        }
        return false;
    }

    /** Whether a note begins on word {@code k} of the division, the next beat's first word included. */
    private boolean isPlayed(int k, int d) {
        return (long) k * ticks % d == 0 && attack[(int) ((long) k * ticks / d)];
    }

    /** Whether another voice of two or more notes goes on the words of {@code d}, and the note here is not its. */
    private boolean isAgainst(int tick, int d) {
        for (boolean[] line : lines) {
            int notes = 0;
            boolean said = !line[tick];
            for (int t = 0; t < ticks && said; t++) {
                notes += line[t] ? 1 : 0;
                said = !line[t] || isSaid(t, d);
            }
            if (said && notes >= 2) {
                return true;
            }
        }
        return false;
    }
}
