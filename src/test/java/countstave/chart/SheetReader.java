package countstave.chart;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** Reads the texts of a PDF one by one, in the order in which they were drawn, with their place and size. */
final class SheetReader extends PDFTextStripper {

    /**
     * One drawn text. {@code size} is its height in points, {@code x} and {@code y} from the upper left corner, {@code
     * right} where it ends.
     */
    record Run(int page, String text, double size, boolean bold, double x, double y, double right) {
    }

    private final List<Run> runs = new ArrayList<>();
    private final List<TextPosition> glyphs = new ArrayList<>();
    private boolean bold;

    private SheetReader() {
    }

    static List<Run> read(byte[] pdf) throws IOException {
        SheetReader reader = new SheetReader();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            reader.getText(document);
        }
        return reader.runs;
    }

    @Override
    protected void showText(byte[] string) throws IOException {
        glyphs.clear();
        super.showText(string);
        if (!glyphs.isEmpty()) {
            TextPosition first = glyphs.get(0);
            TextPosition last = glyphs.get(glyphs.size() - 1);
            StringBuilder text = new StringBuilder();
            glyphs.forEach(glyph -> text.append(glyph.getUnicode()));
            runs.add(new Run(getCurrentPageNo(), text.toString(), first.getYScale(), bold, first.getX(), first.getY(),
                    last.getX() + last.getWidth()));
        }
    }

    @Override
    protected void processTextPosition(TextPosition text) {
        bold = text.getFont().getName().contains("Bold");
        glyphs.add(text);
    }
}
