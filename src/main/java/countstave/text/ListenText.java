package countstave.text;

import countstave.count.NoteNames;
import countstave.listen.ListenWords;
import countstave.listen.Listening;
import countstave.listen.Place;
import countstave.listen.PlannedStroke;
import countstave.plain.SafeText;
import countstave.score.BarTimeline;
import countstave.time.Exact;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What was played, as plain text: sentences first, then a table with a row for each place of the passage. Right of it the
 * mean stands to scale against the line of the plan, with its spread on either side.
 */
public final class ListenText {

    /** Columns on either side of the line; one is this many milliseconds. */
    private static final int REACH = 12;
    private static final int MS_A_COLUMN = 4;
    /** Of more repeats than this the single times are left to the data. */
    private static final int EACH = 6;
    private static final String INDENT = "  ";

    private final Appendable out;
    private final TextOptions options;
    private final Listening listening;
    private final NoteNames names;

    private ListenText(Listening listening, TextOptions options, Appendable out) {
        this.listening = listening;
        this.options = options;
        this.out = out;
        this.names = options.names();
    }

    /**
     * @param title of the score
     * @param score how the score is called on a command line
     * @param better sentences about an earlier take; empty for none
     */
    public static void write(String title, String score, Listening listening, List<String> better, TextOptions options,
            Appendable out) throws IOException {
        new ListenText(listening, options, out).all(title, score, better);
    }

    private void all(String title, String score, List<String> better) throws IOException {
        line(title + ": " + listening.take().name());
        line("");
        for (String sentence : ListenWords.of(listening, names)) {
            sentence(sentence);
        }
        for (String sentence : better) {
            sentence(sentence);
        }
        List<String> seams = ListenWords.seams(listening, score);
        if (!seams.isEmpty()) {
            line("");
            line(options.phrase("listen.work-on"));
            for (String seam : seams) {
                line(INDENT + seam);
            }
        }
        line("");
        table();
    }

    private void sentence(String sentence) throws IOException {
        for (String line : Wrapping.of(SafeText.of(sentence), options.width(), INDENT)) {
            out.append(line).append('\n');
        }
    }

    private void line(String line) throws IOException {
        out.append(SafeText.of(line)).append('\n');
    }

    private void table() throws IOException {
        boolean each = listening.repeats() > 1 && listening.repeats() <= EACH;
        ListenColumns columns = ListenColumns.of(names);
        int scaleEnd = columns.scale() + 2 * REACH + 1;
        String lateSide = options.phrase("listen.table.late-side");
        PaddedLine head = new PaddedLine();
        head.put(0, options.phrase("listen.table.bar"));
        head.put(columns.beat(), options.phrase("listen.table.beat"));
        head.put(columns.count(), options.phrase("listen.table.count"));
        head.put(columns.late(), options.phrase("listen.table.late"));
        head.put(columns.share(), options.phrase("listen.table.share"));
        head.put(columns.spread(), options.phrase("listen.table.spread"));
        head.put(columns.heard(), options.phrase("listen.table.heard"));
        head.put(columns.scale(), options.phrase("listen.table.early-side"));
        head.put(scaleEnd - lateSide.length(), lateSide);
        if (each) {
            head.put(scaleEnd + 1, options.phrase("listen.table.each"));
        }
        line(head.toString());
        String barBefore = "";
        for (Place place : listening.places()) {
            PlannedStroke planned = place.planned();
            BarTimeline bar = listening.pass().stretch().timeline(planned.spot().bar());
            String number = bar.bar().number();
            PaddedLine row = new PaddedLine();
            row.put(0, number.equals(barBefore) ? "" : number);
            barBefore = number;
            row.put(columns.beat(), String.valueOf(bar.beatAt(planned.spot().at()).number()));
            row.put(columns.count(), planned.word().isEmpty() ? options.symbols() ? "\u00b7" : "." : planned.word());
            if (!place.lates().isEmpty()) {
                Exact unit = listening.pass().runs().get(planned.run()).unitSeconds();
                right(row, columns.late() + ListenColumns.LATE, String.format(Locale.ROOT, "%+.0f", place.mean() * 1000) + (place.isOff() ? " !" : ""), place.isOff() ? 2 : 0);
                right(row, columns.share() + ListenColumns.SHARE, ListenWords.ofUnit(place.mean(), unit), 0);
                if (place.lates().size() > 1) {
                    right(row, columns.spread() + ListenColumns.SPREAD, String.format(Locale.ROOT, "%.0f", place.spread() * 1000), 0);
                }
            }
            right(row, columns.heard() + ListenColumns.HEARD, place.lates().size() + "/" + (place.lates().size() + place.missed()), 0);
            row.put(columns.scale(), scale(place));
            if (each) {
                row.put(scaleEnd + 1, each(place));
            }
            line(row.toString());
        }
    }

    /** Ends at a column, but for what hangs out behind it. */
    private static void right(PaddedLine row, int end, String text, int hanging) {
        row.put(end - text.length() + hanging, text);
    }

    private String scale(Place place) {
        char[] line = " ".repeat(2 * REACH + 1).toCharArray();
        line[REACH] = options.symbols() ? '\u2502' : '|';
        if (!place.lates().isEmpty()) {
            int mean = column(place.mean());
            int spread = (int) Math.round(place.spread() * 1000 / MS_A_COLUMN);
            for (int i = Math.max(0, mean - spread); i <= Math.min(2 * REACH, mean + spread); i++) {
                line[i] = options.symbols() ? '\u2500' : '-';
            }
            line[mean] = options.symbols() ? '\u25cf' : '*';
        }
        return new String(line).stripTrailing();
    }

    private static int column(double seconds) {
        return Math.max(0, Math.min(2 * REACH, REACH + (int) Math.round(seconds * 1000 / MS_A_COLUMN)));
    }

    private String each(Place place) {
        List<String> lates = new ArrayList<>();
        place.lates().forEach(late -> lates.add(String.format(Locale.ROOT, "%+.0f", late * 1000)));
        return String.join(" ", lates);
    }
}
