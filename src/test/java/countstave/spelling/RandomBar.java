package countstave.spelling;

import countstave.score.NoteValue;
import countstave.spelling.respell.Group;
import countstave.spelling.respell.Item;
import countstave.spelling.respell.Symbol;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** A bar of notes, rests, ties and tuplets that was written down without a thought for its beats. */
record RandomBar(String meter, List<Item> items) {

    private static final String[] METERS = {"4/4", "4/4", "3/4", "2/4", "6/8", "12/8", "9/8", "5/4", "2/2", "2+2+3/8"};
    private static final int[][] RATIOS = {{3, 2}, {3, 2}, {6, 4}, {5, 4}, {7, 4}, {2, 3}, {4, 3}, {4, 6}, {7, 8}, {4, 2}};
    private static final Duration[] LONG = {Duration.of(1, 4), Duration.of(1, 2), Duration.of(3, 8), Duration.of(3, 4)};
    private static final Duration GRAIN = Duration.of(1, 32);

    static RandomBar of(Random random) {
        String meter = METERS[random.nextInt(METERS.length)];
        return new RandomBar(meter, new Maker(random, length(meter)).bar());
    }

    private static Duration length(String meter) {
        int sum = 0;
        for (String term : meter.substring(0, meter.indexOf('/')).split("\\+")) {
            sum += Integer.parseInt(term);
        }
        return Duration.of(sum, Integer.parseInt(meter.substring(meter.indexOf('/') + 1)));
    }

    /** The bar with {@code items} in place of what stands from {@code from} to {@code to}. */
    RandomBar with(Offset from, Offset to, List<Item> anew) {
        List<Item> changed = new ArrayList<>();
        for (Item item : items) {
            if (!item.end().isAfter(from)) {
                changed.add(item);
            }
        }
        changed.addAll(anew);
        for (Item item : items) {
            if (!item.start().isBefore(to)) {
                changed.add(item);
            }
        }
        return new RandomBar(meter, changed);
    }

    /** In the notation of rhythms. */
    String text() {
        return text(items).replaceFirst("~(]*)$", "$1");
    }

    private static String text(List<Item> items) {
        List<String> words = new ArrayList<>();
        for (Item item : items) {
            if (item instanceof Group group) {
                words.add(group.ratio() + "[" + text(group.items()) + "]");
            } else {
                Symbol s = (Symbol) item;
                words.add((s.rest() ? "r" : "") + s.value().length().denominator() + ".".repeat(s.dots())
                        + (s.tied() ? "~" : ""));
            }
        }
        return String.join(" ", words);
    }

    private static final class Maker {

        private final Random random;
        private final Duration length;
        private final List<Item> items = new ArrayList<>();
        private Offset at = Offset.ZERO;
        private boolean restNext;

        Maker(Random random, Duration length) {
            this.random = random;
            this.length = length;
        }

        List<Item> bar() {
            while (at.sinceStart().isShorterThan(length)) {
                int kind = random.nextInt(8);
                if (kind == 0 && at.sinceStart().isMultipleOf(Duration.of(1, 4))) {
                    brokenTriplets();
                } else if (kind < 3) {
                    tuplet();
                } else {
                    items.add(symbol(Duration.of(1, 1L << (1 + random.nextInt(5))), Ratio.ONE, rest()));
                }
            }
            return items;
        }

        private Duration rest() {
            return length.minus(at.sinceStart());
        }

        /** A value near {@code value} that is no longer than {@code room}, written lengths both. */
        private Symbol symbol(Duration value, Ratio ratio, Duration room) {
            int dots = random.nextInt(3) == 0 ? 1 + random.nextInt(2) : 0;
            Duration plain = value;
            while (plain.isLongerThan(room)) {
                plain = plain.dividedBy(2);
            }
            NoteValue note = NoteValue.ofLength(plain);
            boolean fits = !note.dotted(dots).isLongerThan(room) && (!ratio.isPlain()
                    || note.dotted(dots).isMultipleOf(GRAIN));
            int used = fits ? dots : 0;
            boolean silent = restNext;
            restNext = random.nextInt(6) == 0;
            boolean tied = !silent && !restNext && random.nextInt(6) == 0;
            Duration lasts = ratio.applyTo(note.dotted(used));
            Symbol symbol = new Symbol(at, lasts, note, used, silent, tied);
            at = at.plus(lasts);
            return symbol;
        }

        private void tuplet() {
            Duration over = LONG[random.nextInt(LONG.length)];
            int[] terms = RATIOS[random.nextInt(RATIOS.length)];
            NoteValue unit = NoteValue.ofLength(over.dividedBy(terms[1]));
            if (unit == null || over.isLongerThan(rest())) {
                return;
            }
            Ratio ratio = new Ratio(terms[0], terms[1]);
            Offset start = at;
            List<Item> inside = new ArrayList<>();
            Duration room = unit.length().times(terms[0]);
            boolean dotted = random.nextInt(4) == 0 && terms[0] % 3 == 0;
            boolean coarse = random.nextInt(3) == 0 && terms[0] % 2 == 0;
            while (room.isPositive()) {
                Item item = dotted ? plain(unit, 1, ratio)
                        : coarse ? plain(NoteValue.ofLength(unit.length().times(2)), 0, ratio)
                        : symbol(unit.length().times(1, 1L << random.nextInt(2)).times(1L << random.nextInt(2)), ratio, room);
                inside.add(item);
                room = room.minus(ratio.undo(item.length()));
            }
            items.add(new Group(start, over, ratio, unit, inside));
        }

        /** Six triplet eighths of which the bracket takes the wrong three. */
        private void brokenTriplets() {
            if (rest().isShorterThan(Duration.of(1, 2))) {
                return;
            }
            Ratio ratio = new Ratio(3, 2);
            for (int count = 1; count <= 3; count++) {
                Offset start = at;
                List<Item> inside = new ArrayList<>();
                for (int i = 0; i < (count == 1 ? 1 : count == 2 ? 3 : 2); i++) {
                    inside.add(plain(NoteValue.EIGHTH, 0, ratio));
                }
                items.add(new Group(start, at.minus(start), ratio, NoteValue.EIGHTH, inside));
            }
        }

        private Symbol plain(NoteValue value, int dots, Ratio ratio) {
            Duration lasts = ratio.applyTo(value.dotted(dots));
            Symbol symbol = new Symbol(at, lasts, value, dots, restNext, false);
            restNext = false;
            at = at.plus(lasts);
            return symbol;
        }
    }
}
