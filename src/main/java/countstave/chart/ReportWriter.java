package countstave.chart;

import countstave.chart.engrave.NotationEngraver;
import countstave.chart.layout.Chart;
import countstave.chart.layout.ReportLayout;
import countstave.chart.pdf.PdfDrawing;
import countstave.chart.svg.SvgDrawing;
import countstave.chart.svg.SvgInline;
import countstave.count.PartCounts;
import countstave.listen.Listening;
import countstave.plain.MarkupText;
import countstave.plain.SafeText;
import countstave.score.Score;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** What was heard of a take, drawn: the passage with a row of signs under its counts, for the stand or the screen. */
public final class ReportWriter {

    private ReportWriter() {
    }

    /**
     * @param part the bars that were played
     * @param told sentences, in order
     * @param out left open
     * @return what the user must be told: letters that are missing; one sentence each
     */
    public static List<String> pdf(PartCounts part, Score score, Listening listening, List<String> told, ChartOptions options,
            OutputStream out) throws IOException {
        Chart chart = layout(part, score, listening, told, options);
        PdfDrawing.write(chart, out);
        return chart.notes();
    }

    /** One page of the web that needs nothing beside it; what must be told as of {@link #pdf}. */
    public static List<String> html(PartCounts part, Score score, Listening listening, List<String> told, ChartOptions options,
            OutputStream out) throws IOException {
        Chart chart = layout(part, score, listening, told, options);
        SvgInline drawing = SvgDrawing.inline(chart);
        StringBuilder page = new StringBuilder(1 << 16);
        page.append("<!DOCTYPE html>\n<html lang=\"").append(options.phrases().code()).append("\">\n<head><meta charset=\"UTF-8\"><title>")
                .append(MarkupText.text(SafeText.of(score.title() + ": " + listening.take().shortName()))).append("</title>\n<style>"
                        + "body{margin:0;background:#fff}svg.countstave-page{display:block;width:100%;max-width:60rem;height:auto;"
                        + "margin:0 auto}</style></head>\n<body>\n").append(drawing.head());
        drawing.pages().forEach(page::append);
        out.write(page.append("</body>\n</html>\n").toString().getBytes(StandardCharsets.UTF_8));
        return chart.notes();
    }

    /** The positioned shapes, for looking at. */
    public static Chart layout(PartCounts part, Score score, Listening listening, List<String> told, ChartOptions options) {
        return new ReportLayout(new NotationEngraver(), options).layout(part, score, listening, told);
    }
}
