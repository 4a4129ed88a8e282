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
            List<Zone> zones = respeller.zones(field, field.root(), 0);
            return Optional.ofNullable(zones == null ? null : respeller.items(field, zones));
        } catch (Pieces.UnwritableException e) {
            return Optional.empty();
        }
    }

    private boolean isPlain(Field field, Span span) {
        return sounds.stream().allMatch(s -> (isOutside(s.start(), span) || field.isPlain(s.start()))
                && (isOutside(s.end(), span) || field.isPlain(s.end())));
    }

    private static boolean isOutside(Offset at, Span span) {
        return !at.isAfter(span.start()) || !at.isBefore(span.end());
    }

    /** The cheapest zones of a span of a field, or null where there are none. */
    private List<Zone> zones(Field field, Span span, int level) {
        if (isPlain(field, span)) {
            return List.of(new Zone(span, null, field, List.of(), 0));
        }
        if (field.written(span.length()).isShorterThan(SHORTEST_UNIT) || level > MeterFrame.NOWHERE) {
            return null;
        }
        List<Zone> best = split(field, span, level);
        int least = best == null ? Integer.MAX_VALUE : cost(field, span, best);
        for (Ratio ratio : ratios(field, span)) {
            Zone tuplet = tuplet(field, span, ratio);
            if (tuplet != null && tuplet.cost < least) {
                best = List.of(tuplet);
                least = tuplet.cost;
            }
        }
        return best;
    }

    private List<Zone> split(Field field, Span span, int level) {
        List<Zone> zones = new ArrayList<>();
        for (Span part : span.parts()) {
            List<Zone> inner = zones(field, part, level + 1);
            if (inner == null) {
                return null;
            }
            zones.addAll(inner);
        }
        return zones;
    }

    private Zone tuplet(Field field, Span span, Ratio ratio) {
        boolean covered = !span.start().isBefore(sounds.get(0).start())
                && !span.end().isAfter(sounds.get(sounds.size() - 1).end());
        if (!covered || field.depth() >= DEEPEST) {
            return null;
        }
        Field inside = field.inside(span, ratio);
        List<Zone> inner = isPlain(inside, inside.root())
                ? List.of(new Zone(inside.root(), null, inside, List.of(), 0)) : split(inside, inside.root(), 0);
        if (inner == null) {
            return null;
        }
        int beats = (int) span.given().stream().filter(p -> p.level() != Span.Level.PART).count();
        int cost = cost(inside, inside.root(), inner) + PER_BRACKET + PER_HIDDEN_BEAT * Math.max(0, beats - 1)
                + PER_NOTE_OF_TUPLET * ratio.actual() + (ratio.actual() > 7 ? RARE_NUMBER : 0);
        return new Zone(span, ratio, inside, inner, cost);
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
        for (Sound sound : sounds) {
            Sound clipped = sound.clip(first.span.start(), last.span.end());
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
