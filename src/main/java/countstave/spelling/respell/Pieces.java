package countstave.spelling.respell;

import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * Cuts one sound into as few tied notes (or rests) as can be read, at the strongest boundaries there are.
 *
 * <p>A shortest path over the possible cuts, so the answer is the best one and not the first one found.
 */
final class Pieces {

    /** Where a sound stands: how long a stretch is when written, whether it is clear, how strong a cut is. */
    interface Ground {

        /** Written length of a stretch that lasts {@code length}. */
        Duration written(Duration length);

        boolean isClear(Offset from, Offset to, boolean rest);

        /** 0 for the strongest boundary, larger for weaker ones. */
        int weakness(Offset at);

        /** Every position between the two at which a cut may be made. */
        List<Offset> cuts(Offset from, Offset to);
    }

    /** One symbol more weighs more than any choice between cuts. */
    private static final int PER_SYMBOL = 1000;

    /** No row of note values, cut where the ground allows, lasts as long as the sound. */
    static final class UnwritableException extends RuntimeException {

        private static final long serialVersionUID = 1L;

        UnwritableException(String message) {
            super(message);
        }
    }

    private Pieces() {
    }

    static List<Symbol> of(Sound sound, Ground ground) {
        Symbol.Value whole = value(sound, ground, sound.start(), sound.end());
        if (whole != null) {
            return List.of(symbol(sound, sound.start(), sound.end(), whole));
        }
        TreeSet<Offset> all = new TreeSet<>(ground.cuts(sound.start(), sound.end()));
        all.add(sound.start());
        all.add(sound.end());
        List<Offset> cuts = List.copyOf(all);
        int n = cuts.size();
        int[] cost = new int[n];
        int[] from = new int[n];
        for (int to = 1; to < n; to++) {
            cost[to] = Integer.MAX_VALUE;
            for (int at = 0; at < to; at++) {
                Symbol.Value value = cost[at] == Integer.MAX_VALUE ? null
                        : value(sound, ground, cuts.get(at), cuts.get(to));
                if (value == null) {
                    continue;
                }
                int weakness = at == 0 ? 0 : ground.weakness(cuts.get(at));
                int total = cost[at] + PER_SYMBOL + weakness * 10 + value.dots();
                if (total < cost[to]) {
                    cost[to] = total;
                    from[to] = at;
                }
            }
        }
        if (cost[n - 1] == Integer.MAX_VALUE) {
            throw new UnwritableException(sound + " cannot be written with note values down to the 1024th");
        }
        return symbols(sound, ground, cuts, from);
    }

    private static Symbol.Value value(Sound sound, Ground ground, Offset from, Offset to) {
        Symbol.Value value = Symbol.valueOf(ground.written(to.minus(from)), 1);
        return value != null && ground.isClear(from, to, sound.rest()) ? value : null;
    }

    private static List<Symbol> symbols(Sound sound, Ground ground, List<Offset> cuts, int[] from) {
        List<Symbol> symbols = new ArrayList<>();
        for (int to = cuts.size() - 1; to > 0; to = from[to]) {
            Offset start = cuts.get(from[to]);
            Offset end = cuts.get(to);
            symbols.add(0, symbol(sound, start, end, value(sound, ground, start, end)));
        }
        return symbols;
    }

    private static Symbol symbol(Sound sound, Offset start, Offset end, Symbol.Value value) {
        boolean tied = !sound.rest() && (sound.held() || end.isBefore(sound.end()));
        return new Symbol(start, end.minus(start), value.value(), value.dots(), sound.rest(), tied);
    }
}
