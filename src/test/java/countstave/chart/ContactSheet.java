package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.layout.Chart;
import countstave.chart.pdf.PdfDrawing;
import countstave.musicxml.ScoreFile;
import countstave.score.ScoreException;
import countstave.testing.Corpus;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;

/**
 * The first pages of all scores of the open corpus and the demo scores on one picture, for the eye:
 * {@code mvn -q test -Dtest=ContactSheet} writes {@code target/contact-sheet.png}. {@code -Dsheet.only=quartets} takes those whose
 * path has this in it, {@code -Dsheet.dpi=80} makes them larger. On request only: it takes a minute and more.
 */
class ContactSheet {

    private static final float DPI = Float.parseFloat(System.getProperty("sheet.dpi", "45"));
    private static final String ONLY = System.getProperty("sheet.only", "");
    private static final Path TARGET = Path.of("target", "contact-sheet.png");
    private static final double MM_PER_INCH = 25.4;
    private static final int LINE = 12;

    @Test
    void drawIt() throws IOException {
        List<Path> scores = new ArrayList<>(Corpus.scores());
        scores.addAll(Corpus.demo());
        scores.removeIf(score -> !score.toString().contains(ONLY));
        int width = (int) Math.round(210 / MM_PER_INCH * DPI);
        int height = (int) Math.round(297 / MM_PER_INCH * DPI) + LINE;
        int columns = (int) Math.ceil(Math.sqrt(scores.size() * 1.6));
        int rows = (scores.size() + columns - 1) / columns;
        BufferedImage sheet = new BufferedImage(columns * width, rows * height, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D out = sheet.createGraphics();
        out.setColor(Color.WHITE);
        out.fillRect(0, 0, sheet.getWidth(), sheet.getHeight());
        out.setColor(Color.BLACK);
        out.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        out.setFont(out.getFont().deriveFont(9f));
        int drawn = 0;
        for (int i = 0; i < scores.size(); i++) {
            int x = i % columns * width;
            int y = i / columns * height;
            out.drawString(scores.get(i).getFileName().toString(), x + 4, y + LINE - 2);
            try {
                out.drawImage(page(scores.get(i)), x, y + LINE, null);
                drawn++;
            } catch (ScoreException e) {
                out.drawString(e.getMessage().substring(0, Math.min(50, e.getMessage().length())), x + 4, y + 3 * LINE);
            }
            out.drawRect(x, y, width - 1, height - 1);
        }
        Files.createDirectories(TARGET.getParent());
        ImageIO.write(sheet, "png", new File(TARGET.toString()));
        assertTrue(drawn > 0, "no score could be drawn");
    }

    private static BufferedImage page(Path score) throws IOException {
        CountedScore counted = CountedScore.of(ScoreFile.load(score), CountingOptions.defaults());
        Chart chart = ChartWriter.layout(counted.parts().subList(0, 1), counted.score(), ChartOptions.standard());
        Chart first = new Chart(chart.about(), chart.paper(), chart.pages().subList(0, 1), List.of(), List.of());
        ByteArrayOutputStream pdf = new ByteArrayOutputStream();
        PdfDrawing.write(first, pdf);
        try (PDDocument document = Loader.loadPDF(pdf.toByteArray())) {
            return new PDFRenderer(document).renderImageWithDPI(0, DPI);
        }
    }
}
