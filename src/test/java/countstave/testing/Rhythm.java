package countstave.testing;

import countstave.score.NoteValue;
import countstave.score.Written;
import countstave.time.Duration;
import countstave.time.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The one notation for rhythms in the tests, and its parser: one voice of one bar.
 * <pre>
 * 4 8 16       values (1 whole, 2 half, 4 quarter ...)      4.   dotted, 4.. twice
 * r8           rest                                         R    rest of the whole bar
 * 8~           tied to the next note                        8&gt;   accented
 * g8           grace note
 * 3:2[8 8 8]   tuplet; they nest: 3:2[4 5:4[16 16 16 16 16] 4]
 * </pre>
 * A whole bar ({@link Snippets}, {@link Rhythms}) may have several voices, {@code 4 4 / 2}, and begin with a rehearsal
 * mark, {@code A|4 4 4 4}.
 */
final class Rhythm {

    /** A note or rest; {@code opens} and {@code closes} are the tuplets that begin and end with it, outermost first. */
    record Item(Written written, boolean rest, boolean tied, boolean accent, boolean grace, boolean barRest,
            List<Group> opens, List<Group> closes) {

        Duration length() {
            return grace ? Duration.ZERO : written.length();
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
        if (!token.contains(":")) {
            items.add(item(token, ratio));
            return;
        }
        if (next == tokens.length || !tokens[next++].equals("[")) {
            throw new IllegalArgumentException("a tuplet is written " + token + "[8 8 8]");
        }
        String[] terms = token.split(":");
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

    private static final Pattern NOTE = Pattern.compile("([rg]?)([0-9]+)(\\.*)([~>]*)");

    private static Item item(String token, Ratio ratio) {
        if (token.equals("R")) {
            return new Item(Written.of(NoteValue.WHOLE, 0, ratio), true, false, false, false, true, new ArrayList<>(),
                    new ArrayList<>());
        }
        Matcher note = NOTE.matcher(token);
        if (!note.matches()) {
            throw new IllegalArgumentException("no note or rest: " + token);
        }
        NoteValue value = NoteValue.ofLength(Duration.of(1, Long.parseLong(note.group(2))));
        return new Item(Written.of(value, note.group(3).length(), ratio),
                note.group(1).equals("r"), note.group(4).contains("~"), note.group(4).contains(">"),
                note.group(1).equals("g"), false, new ArrayList<>(), new ArrayList<>());
    }
}
