package countstave.chart.layout;

import countstave.chart.ChartOptions;
import countstave.chart.engrave.BarEngraver;
import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Text;
import countstave.count.PartCounts;
import countstave.listen.Listening;
import countstave.score.Score;
import java.util.List;

/** Lays out what was heard of a take: the sentences, then the passage with a {@link HeardRow} under its counts. */
public final class ReportLayout {

    private static final double WORDS = 1.7;
    private static final double GAP = 1.5;
    private static final double LINE_GAP = 1.2;

    private final BarEngraver engraver;
    private final Measures measures = Measures.standard();
    private final ChartOptions options;

    public ReportLayout(BarEngraver engraver, ChartOptions options) {
        this.engraver = engraver;
        this.options = options;
    }

    /**
     * @param part the bars that were played
     * @param told sentences, in order
     */
    public Chart layout(PartCounts part, Score score, Listening listening, List<String> told) {
        String name = part.part().name();
        String key = part.key(options.phrases());
        PageFrame frame = new PageFrame(options, measures, score.title(), score.composer(), name + ": " + listening.take().shortName(),
                (key.isEmpty() ? "" : key + ". ") + options.phrases().text("listen.row.key"));
        SheetPages sheet = new SheetPages(frame);
        for (String sentence : told) {
            sheet.add(SheetBlock.words(sentence, WORDS, Text.Style.REGULAR, Role.SHEET_TEXT, frame.width(), false, measures));
        }
        sheet.add(SheetBlock.gap(GAP));
        music(part, listening, frame).forEach(sheet::add);
        PageList pages = new PageList();
        pages.addAll(sheet.finished(), frame);
        Letters letters = new Letters(measures);
        List<Chart.Page> framed = pages.framed(letters);
        return new Chart(new Chart.About(score.title() + ": " + listening.take().shortName(), score.composer(), options.phrases().text("listen.subject"),
                options.phrases().code()), new Chart.Paper(options.spaceMm(), options.pageWidthMm(), options.pageHeightMm()), framed,
                List.of(new Chart.Bookmark(name, 0, frame.top, List.of())), letters.notes());
    }

    private List<SheetBlock> music(PartCounts part, Listening listening, PageFrame frame) {
        HeardRow row = new HeardRow(listening, measures, new CountsBelow(measures, options.names(), (bar, at) -> ""),
                options.phrases());
        List<MeasuredBar> bars = new BarMeasurer(engraver, measures, options, true).measure(part);
        double width = frame.width() - HeardRow.LABEL_WIDTH;
        double room = frame.musicTop(false) - frame.musicBottom();
        return SheetBlock.lines(new SystemBuilder(measures, row::add), bars, width, room, HeardRow.LABEL_WIDTH, LINE_GAP);
    }
}
