package countstave.spelling.respell;

import countstave.score.NoteValue;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Writes given sounds as note values: with tuplets only where plain values do not reach, over as short a stretch as
 * reads well, and with ties wherever one note would hide a beat or the middle of the bar.
 *
 * <p>The bar is a tree (bar, half, beats, parts of a beat; see {@link MeterFrame}). A span whose edges are all plain
 * stays plain; any other is either one tuplet or is split into its parts, whichever needs fewer symbols and brackets.
 * Inside a tuplet the same holds for each of its units, so that tuplets may nest. Then every sound is cut into tied
 * notes by {@link Pieces}. Starts and ends of all sounds stay exactly where they are.
 *
 * <p>Ratios are the customary ones: n in the time of the largest power of two below n, or, over a dotted value, of
 * 3, 6 or 12 (textbooks on tuplets; facts.md of the project's sources).
 */
public final class Respeller {

    private static final int PER_SYMBOL = 1000;
    private static final int PER_BRACKET = 2000;
    private static final int PER_HIDDEN_BEAT = 2500;
    private static final int RARE_NUMBER = 500;
    private static final int PER_NOTE_OF_TUPLET = 10;
    private static final int LARGEST_TUPLET = 15;
    private static final int DEEPEST = 2;
    /** No tuplet has fewer notes than three. */
    private static final int CHEAPEST_BRACKET = PER_BRACKET + 3 * PER_NOTE_OF_TUPLET;
    private static final Duration SHORTEST_UNIT = Duration.of(1, 128);

    private final List<Sound> sounds;

    private Respeller(List<Sound> sounds) {
        this.sounds = sounds;
    }

    /** A stretch of a field that is plain ({@code ratio} null) or one tuplet with zones of its own. */
    private record Zone(Span span, Ratio ratio, Field field, List<Zone> inner, int cost) {
    }

    /**
     * The sounds as written in a bar.
     *
     * @param sounds in order, without gaps and overlaps; they may fill a part of the bar
     * @return empty where they fit no tuplet of up to 15 notes, or where no note values fit between the boundaries of the
     *     bar: in 4/5, or without a signature
     */
    public static Optional<List<Item>> spell(MeterFrame frame, List<Sound> sounds) {
        if (sounds.isEmpty() || !frame.bar().holds(sounds.get(0).start(), sounds.get(sounds.size() - 1).end())) {
            return Optional.empty();
        }
        Respeller respeller = new Respeller(List.copyOf(sounds));
        Field field = Field.of(frame);
        try {
            List<Zone> zones = respeller.zones(field, field.root(), 0, Integer.MAX_VALUE);
            return Optional.ofNullable(zones == null ? null : respeller.items(field, zones));
        } catch (Pieces.UnwritableException e) {
            return Optional.empty();
        }
    }

    private boolean isPlain(Field field, Span span) {
        Offset start = span.start();
        Offset end = span.end();
        for (Sound sound : sounds) {
            if (isWithin(sound.start(), start, end) && !field.isPlain(sound.start())
                    || isWithin(sound.end(), start, end) && !field.isPlain(sound.end())) {
                return false;
            }
        }
        return true;
    }

    private static boolean isWithin(Offset at, Offset start, Offset end) {
        return at.isAfter(start) && at.isBefore(end);
    }

    /**
     * The cheapest zones of a span of a field, or null where there are none, or none whose brackets are worth it.
     *
     * @param spare what all brackets in it together may cost at most, or the span around it is better written otherwise
     */
    private List<Zone> zones(Field field, Span span, int level, int spare) {
        if (isPlain(field, span)) {
            return List.of(new Zone(span, null, field, List.of(), 0));
        }
        if (spare <= CHEAPEST_BRACKET || field.written(span.length()).isShorterThan(SHORTEST_UNIT)
                || level > MeterFrame.NOWHERE) {
            return null;
        }
        // every sound is a symbol at least, so that the rest of a cost is what may be spent on brackets
        int symbols = PER_SYMBOL * sounding(span);
        List<Ratio> ratios = ratios(field, span);
        Zone[] tuplets = new Zone[ratios.size()];
        int limit = Integer.MAX_VALUE;
        for (int i = 0; i < tuplets.length; i++) {
            tuplets[i] = plainTuplet(field, span, ratios.get(i));
            limit = tuplets[i] == null ? limit : Math.min(limit, tuplets[i].cost + 1);
        }
        List<Zone> best = split(field, span, level, Math.min(spare, spare(limit, symbols)));
        int least = best == null ? Integer.MAX_VALUE : cost(field, span, best);
        for (int i = 0; i < tuplets.length; i++) {
            limit = Math.min(limit, least);
            int left = limit == Integer.MAX_VALUE ? spare : spare(limit, symbols);
            Zone tuplet = tuplets[i] != null ? tuplets[i]
                    : nestedTuplet(field, span, ratios.get(i), left - bracket(span, ratios.get(i)));
            if (tuplet != null && tuplet.cost < least) {
                best = List.of(tuplet);
                least = tuplet.cost;
            }
        }
        return best;
    }

    private static int spare(int limit, int symbols) {
        return limit == Integer.MAX_VALUE ? limit : limit - symbols;
    }

    private List<Zone> split(Field field, Span span, int level, int spare) {
        List<Zone> zones = new ArrayList<>();
        int left = spare;
        for (Span part : span.parts()) {
            List<Zone> inner = zones(field, part, level + 1, left);
            if (inner == null) {
                return null;
            }
            left -= brackets(inner);
            zones.addAll(inner);
        }
        return zones;
    }

    /** A tuplet with no tuplets inside; null where its notes do not reach every sound. */
    private Zone plainTuplet(Field field, Span span, Ratio ratio) {
        if (!mayHoldTuplet(field, span)) {
            return null;
        }
        Field inside = field.inside(span, ratio);
        return isPlain(inside, inside.root())
                ? tuplet(span, ratio, inside, List.of(new Zone(inside.root(), null, inside, List.of(), 0))) : null;
    }

    /** A tuplet with tuplets inside; null where there is none, or none whose inner brackets cost less than {@code spare}. */
    private Zone nestedTuplet(Field field, Span span, Ratio ratio, int spare) {
        if (spare <= CHEAPEST_BRACKET || field.depth() + 1 >= DEEPEST || !mayHoldTuplet(field, span)) {
            return null;
        }
        Field inside = field.inside(span, ratio);
        List<Zone> inner = split(inside, inside.root(), 0, spare);
        return inner == null ? null : tuplet(span, ratio, inside, inner);
    }

    private boolean mayHoldTuplet(Field field, Span span) {
        return field.depth() < DEEPEST && !span.start().isBefore(sounds.get(0).start())
                && !span.end().isAfter(sounds.get(sounds.size() - 1).end());
    }

    private Zone tuplet(Span span, Ratio ratio, Field inside, List<Zone> inner) {
        return new Zone(span, ratio, inside, inner, cost(inside, inside.root(), inner) + bracket(span, ratio));
    }

    private static int brackets(List<Zone> zones) {
        int sum = 0;
        for (Zone zone : zones) {
            sum += zone.ratio == null ? 0 : bracket(zone.span, zone.ratio) + brackets(zone.inner);
        }
        return sum;
    }

    /** What a tuplet costs besides what is inside it. */
    private static int bracket(Span span, Ratio ratio) {
        int beats = 0;
        for (Span part : span.given()) {
            beats += part.level() == Span.Level.PART ? 0 : 1;
        }
        return PER_BRACKET + PER_HIDDEN_BEAT * Math.max(0, beats - 1) + PER_NOTE_OF_TUPLET * ratio.actual()
                + (ratio.actual() > 7 ? RARE_NUMBER : 0);
    }

    /** How many sounds a span holds, wholly or in part. */
    private int sounding(Span span) {
        Offset end = span.end();
        int count = 0;
        for (Sound sound : sounds) {
            count += sound.start().isBefore(end) && sound.end().isAfter(span.start()) ? 1 : 0;
        }
        return count;
    }

    /** Symbols of the plain stretches at their price, tuplets at theirs. */
    private int cost(Field field, Span span, List<Zone> zones) {
        int cost = 0;
        for (List<Zone> run : runs(zones)) {
            Zone first = run.get(0);
            cost += first.ratio != null ? first.cost : PER_SYMBOL * symbols(field, first, run.get(run.size() - 1)).size();
        }
        return cost;
    }

    private List<Symbol> symbols(Field field, Zone first, Zone last) {
        List<Symbol> symbols = new ArrayList<>();
        Offset end = last.span.end();
        for (Sound sound : sounds) {
            Sound clipped = sound.clip(first.span.start(), end);
            if (clipped != null) {
                symbols.addAll(Pieces.of(clipped, field));
            }
        }
        return symbols;
    }

    /** Neighbouring plain zones together, every tuplet alone. */
    private static List<List<Zone>> runs(List<Zone> zones) {
        List<List<Zone>> runs = new ArrayList<>();
        Zone before = null;
        for (Zone zone : zones) {
            if (before == null || before.ratio != null || zone.ratio != null) {
                runs.add(new ArrayList<>());
            }
            runs.get(runs.size() - 1).add(zone);
            before = zone;
        }
        return runs;
    }

    private List<Item> items(Field field, List<Zone> zones) {
        List<Item> items = new ArrayList<>();
        for (List<Zone> run : runs(zones)) {
            Zone first = run.get(0);
            if (first.ratio == null) {
                items.addAll(symbols(field, first, run.get(run.size() - 1)));
            } else {
                NoteValue unit = NoteValue.ofLength(field.written(first.span.length()).dividedBy(first.ratio.normal()));
                items.add(new Group(first.span.start(), first.span.length(), first.ratio, unit,
                        items(first.field, first.inner)));
            }
        }
        return items;
    }

    /** The customary ratios whose unit is a note value over this span. */
    private static List<Ratio> ratios(Field field, Span span) {
        Duration written = field.written(span.length());
        List<Ratio> ratios = new ArrayList<>();
        for (int actual = 3; actual <= LARGEST_TUPLET; actual++) {
            int normal = customary(actual, written);
            if (normal > 0) {
                Duration unit = written.dividedBy(normal);
                if (NoteValue.ofLength(unit) != null && !unit.isShorterThan(SHORTEST_UNIT)) {
                    ratios.add(new Ratio(actual, normal));
                }
            }
        }
        return ratios;
    }

    /**
     * The number of normal notes that {@code actual} notes usually replace over a stretch of this written length; 0
     * where there is no usual one, or where {@code actual} needs no tuplet.
     */
    public static int customary(int actual, Duration written) {
        if (written.numerator() == 1 || MeterFrame.isPowerOfTwo(written.numerator()) && written.denominator() == 1) {
            int normal = Integer.highestOneBit(actual);
            return normal == actual ? 0 : normal;
        }
        if (written.numerator() == 3) {
            for (int normal = 3; normal < actual; normal *= 2) {
                if (actual < 2 * normal && !MeterFrame.isPowerOfTwo(actual)) {
                    return normal;
                }
            }
        }
        return 0;
    }
}
