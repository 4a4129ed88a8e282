package countstave.chart.layout;

import countstave.chart.ChartOptions;
import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.practice.Cautions;
import countstave.score.Score;
import java.util.List;
import java.util.Locale;

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
    private final PageFrame frame;
    private final SheetPages sheet;

    KeyPages(PartCounts counts, Score score, ChartOptions options, Measures measures) {
        this.counts = counts;
        this.measures = measures;
        frame = new PageFrame(options, measures, score.title(), score.composer(), heading(), counts.system().title());
        sheet = new SheetPages(frame);
    }

    private String heading() {
        return counts.part().name() + ": how it is counted";
    }

    /** Adds the page, or pages, and gives their bookmark. */
    Chart.Bookmark addPages(List<Chart.Page> pages, List<PageFrame> frames, List<Boolean> firsts) {
        CountingSystem system = counts.system();
        heading(system.title());
        if (!system.about().isEmpty()) {
            words(system.about(), Text.Style.REGULAR);
        }
        sheet.add(SheetBlock.gap(GAP));
        heading("What is counted");
        Divisions.of(counts).forEach(this::division);
        sheet.add(SheetBlock.gap(GAP));
        heading("How the words are said");
        String spoken = counts.key();
        words(spoken.isEmpty() ? "As they are printed." : spoken + "; all others as they are printed.", Text.Style.REGULAR);
        words("Bold: a note begins with the word. In parentheses: said, and nothing is played. A dot: a note that is played and felt,"
                + " and not said. At a thick bar the count changes, to what the words beside it say; they also say how much faster"
                + " or slower the syllables come than before.", Text.Style.REGULAR);
        sheet.add(SheetBlock.gap(GAP));
        heading("With care");
        Cautions.ALL.forEach(caution -> words(caution, Text.Style.ITALIC));
        int first = pages.size();
        for (List<Shape> shapes : sheet.finished()) {
            pages.add(new Chart.Page(shapes));
            frames.add(frame);
            firsts.add(pages.size() == first + 1);
        }
        return new Chart.Bookmark(heading(), first, frame.top, List.of());
    }

    private void division(Divisions.Division division) {
        SheetBlock name = block(division.name(), Text.Style.BOLD, COLUMN - 1, WORDS);
        SheetBlock words = SheetBlock.under(List.of(block(String.join("  ", division.words()), Text.Style.BOLD, frame.width() - COLUMN,
                Sizes.SYLLABLE), block("first in bar " + division.bar() + String.format(Locale.ROOT,
                        "; up to %.1f syllables a second", division.rate()), Text.Style.REGULAR, frame.width() - COLUMN, WORDS)));
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
