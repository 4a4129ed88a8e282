package countstave.chart.layout;

import countstave.chart.ChartOptions;
import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Text;
import countstave.count.CountingSystem;
import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.plain.Phrases;
import countstave.practice.Cautions;
import countstave.score.Score;
import java.util.List;

/** How a part is counted, on a page of its own: the system, each division with its words, how they are said, and with what care. */
final class KeyPages {

    private static final double HEADING = 2.4;
    private static final double WORDS = 1.7;
    private static final double GAP = 1.2;
    private static final double ROW_GAP = 0.5;
    /** Where the words of a division stand, beside its name. */
    private static final double COLUMN = 26;

    private final PartCounts counts;
    private final Measures measures;
    private final Phrases phrases;
    private final NoteNames names;
    private final PageFrame frame;
    private final SheetPages sheet;

    KeyPages(PartCounts counts, Score score, ChartOptions options, Measures measures) {
        this.counts = counts;
        this.measures = measures;
        phrases = options.phrases();
        names = options.names();
        frame = new PageFrame(options, measures, score.title(), score.composer(), heading(), counts.system().title(options.phrases()));
        sheet = new SheetPages(frame);
    }

    private String heading() {
        return phrases.text("key.heading", counts.part().name());
    }

    /** Adds the page, or pages, and gives their bookmark. */
    Chart.Bookmark addPages(PageList pages) {
        CountingSystem system = counts.system();
        heading(system.title(phrases));
        if (!about(system).isEmpty()) {
            words(about(system), Text.Style.REGULAR);
        }
        sheet.add(SheetBlock.gap(GAP));
        heading(phrases.text("key.counted"));
        Divisions.of(counts, names).forEach(this::division);
        sheet.add(SheetBlock.gap(GAP));
        heading(phrases.text("key.said"));
        String spoken = counts.key(phrases);
        words(spoken.isEmpty() ? phrases.text("key.as-printed") : phrases.text("key.others-as-printed", spoken), Text.Style.REGULAR);
        words(phrases.text("key.signs"), Text.Style.REGULAR);
        sheet.add(SheetBlock.gap(GAP));
        heading(phrases.text("cautions"));
        Cautions.in(phrases).forEach(caution -> words(caution, Text.Style.ITALIC));
        int first = pages.size();
        pages.addAll(sheet.finished(), frame);
        return new Chart.Bookmark(heading(), first, frame.top, List.of());
    }

    /** What the system is, where that is known in the language. */
    private String about(CountingSystem system) {
        return phrases.code().equals("en") ? system.about() : phrases.textOr("system.about." + system.name(), "");
    }

    private void division(Divisions.Division division) {
        SheetBlock name = block(division.name(), Text.Style.BOLD, COLUMN - 1, WORDS);
        SheetBlock words = SheetBlock.under(List.of(block(String.join("  ", division.words()), Text.Style.BOLD, frame.width() - COLUMN,
                Sizes.SYLLABLE), block(phrases.text("key.division", division.bar(), phrases.decimal(division.rate(), 1)), Text.Style.REGULAR, frame.width() - COLUMN, WORDS)));
        sheet.add(SheetBlock.beside(name, words, COLUMN));
        sheet.add(SheetBlock.gap(ROW_GAP));
    }

    private void heading(String text) {
        sheet.add(SheetBlock.words(text, HEADING, Text.Style.BOLD, Role.SHEET_HEADING, frame.width(), true, measures));
    }

    private void words(String text, Text.Style style) {
        sheet.add(block(text, style, frame.width(), WORDS));
    }

    private SheetBlock block(String text, Text.Style style, double width, double size) {
        return SheetBlock.words(text, size, style, Role.SHEET_TEXT, width, false, measures);
    }
}
