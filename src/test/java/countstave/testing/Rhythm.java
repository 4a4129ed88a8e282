package countstave.testing;

import countstave.score.NoteValue;
import countstave.time.Duration;
import countstave.time.Ratio;
import java.util.ArrayList;
import java.util.List;

/**
 * One voice of one bar in the short notation of {@link Snippets}: the notes with their tuplets.
 */
final class Rhythm {

    /** A note or rest; {@code opens} and {@code closes} are the tuplets that begin and end with it, outermost first. */
    record Item(NoteValue value, int dots, boolean rest, boolean tied, boolean accent, boolean grace, boolean barRest,
            Ratio ratio, List<Group> opens, List<Group> closes) {

        Duration length() {
            return grace ? Duration.ZERO : ratio.applyTo(value.dotted(dots));
        }
    }

    record Group(Ratio ratio, NoteValue unit, int number) {
    }

    private final String[] tokens;
    private int next;
    private final List<Item> items = new ArrayList<>();

    private Rhythm(String text) {
        tokens = text.replace("[", " [ ").replace("]", " ] ").strip().split("\\s+");
    }

    static List<Item> parse(String text) {
        Rhythm rhythm = new Rhythm(text);
        while (rhythm.next < rhythm.tokens.length) {
            rhythm.read(Ratio.ONE, 0);
        }
        return rhythm.items;
    }

    private void read(Ratio ratio, int depth) {
        String token = tokens[next++];
        if (token.isEmpty()) {
            return;
        }
        if (!token.equals("[")) {
            items.add(item(token, ratio));
            return;
        }
        String[] terms = tokens[next++].split(":");
        Ratio own = new Ratio(Integer.parseInt(terms[0]), Integer.parseInt(terms[1]));
        int first = items.size();
        while (!tokens[next].equals("]")) {
            read(ratio.times(own), depth + 1);
        }
        next++;
        Duration written = Duration.ZERO;
        for (Item item : items.subList(first, items.size())) {
            written = written.plus(item.length());
        }
        NoteValue unit = NoteValue.ofLength(ratio.times(own).undo(written.dividedBy(own.actual())));
        Group group = new Group(own, unit, depth + 1);
        items.get(first).opens().add(0, group);
        items.get(items.size() - 1).closes().add(group);
    }

    private static Item item(String token, Ratio ratio) {
        boolean barRest = token.equals("R");
        boolean rest = barRest || token.startsWith("r");
        boolean grace = token.startsWith("g");
        String value = barRest ? "1" : token.replaceAll("[^0-9]", "");
        return new Item(NoteValue.ofLength(Duration.of(1, Long.parseLong(value))),
                (int) token.chars().filter(c -> c == '.').count(), rest, token.endsWith("~"), token.endsWith(">"),
                grace, barRest, ratio, new ArrayList<>(), new ArrayList<>());
    }
}
