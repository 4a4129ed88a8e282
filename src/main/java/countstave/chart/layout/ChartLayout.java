package countstave.chart.layout;

import countstave.chart.ChartOptions;
import countstave.chart.Contents;
import countstave.chart.engrave.BarEngraver;
import countstave.chart.font.Measures;
import countstave.count.PartCounts;
import countstave.score.Score;
import countstave.score.ScoreException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Lays parts out on pages.
 *
 * <p>The order of things: each bar is measured (notation, syllables and lyrics together), bars are broken into lines,
 * each line is spread and gets its marks and counts, lines are broken into pages, pages get head and foot. All in staff
 * spaces; nothing here knows how it is going to be drawn.
 */
public final class ChartLayout {

    private final BarEngraver engraver;
    private final Measures measures = Measures.standard();

    public ChartLayout(BarEngraver engraver) {
        this.engraver = engraver;
    }

    public Chart layout(List<PartCounts> parts, Score score, ChartOptions options) {
        if (parts.isEmpty()) {
            throw new ScoreException("no part with notes is left to draw");
        }
        List<String> notes = new ArrayList<>();
        PageList pages = new PageList();
        List<Chart.Bookmark> bookmarks = new ArrayList<>();
        Set<String> notDrawn = new TreeSet<>();
        for (PartCounts part : parts) {
            boolean blank = options.contents().blank() != Contents.Blank.NOTHING;
            PartLayout layout = new PartLayout(part, blank ? PartLayout.Sheet.WORKSHEET : PartLayout.Sheet.CHART, score, options,
                    engraver, measures, notes);
            bookmarks.add(layout.addPages(pages));
            notDrawn.addAll(layout.notDrawn());
            if (options.contents().key()) {
                bookmarks.add(new KeyPages(part, score, options, measures).addPages(pages));
            }
            if (blank && options.contents().answers()) {
                // what is to be told of the lines has been told of the worksheet
                bookmarks.add(new PartLayout(part, PartLayout.Sheet.ANSWERS, score, options, engraver, measures, new ArrayList<>())
                        .addPages(pages));
            }
        }
        if (!notDrawn.isEmpty()) {
            notes.add("not drawn: " + notDrawn.stream().map(SignNames::of).collect(Collectors.joining(", ")));
        }
        Letters letters = new Letters(measures);
        List<Chart.Page> framed = pages.framed(letters);
        notes.addAll(letters.notes());
        String subject = parts.stream().map(p -> p.part().name()).collect(Collectors.joining(", "));
        return new Chart(new Chart.About(score.title(), score.composer(), subject, options.phrases().code()),
                new Chart.Paper(options.spaceMm(), options.pageWidthMm(), options.pageHeightMm()), framed, List.copyOf(bookmarks),
                List.copyOf(notes));
    }
}
