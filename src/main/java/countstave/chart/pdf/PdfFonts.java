package countstave.chart.pdf;

import countstave.chart.font.MusicFont;
import countstave.chart.font.TextFont;
import countstave.chart.shape.Box;
import countstave.chart.shape.Text;
import java.io.IOException;
import java.io.OutputStream;
import java.util.EnumMap;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;

/**
 * The fonts of one document. Text faces are embedded with the letters that are used and a table back to Unicode. The
 * music font has CFF outlines, which PDFBox does not embed: each sign is drawn once as a form and then only named.
 */
final class PdfFonts {

    private final PDDocument document;
    private final PDResources resources = new PDResources();
    private final MusicFont music = MusicFont.bravura();
    private final TextFont text = TextFont.sans();
    private final Map<String, String> forms = new TreeMap<>();
    private final Map<Text.Style, PDType0Font> faces = new EnumMap<>(Text.Style.class);

    PdfFonts(PDDocument document) {
        this.document = document;
    }

    /** Shared by all pages. */
    PDResources resources() {
        return resources;
    }

    TextFont text() {
        return text;
    }

    /** The resource name of a sign. */
    String form(String glyph) throws IOException {
        String name = forms.get(glyph);
        if (name == null) {
            name = "G" + (forms.size() + 1);
            forms.put(glyph, name);
            Content content = new Content();
            content.outline(music.outline(glyph).getPathIterator(null));
            PDFormXObject form = new PDFormXObject(document);
            Box box = music.box(glyph);
            form.setBBox(new PDRectangle((float) (box.left() - 0.1), (float) (box.bottom() - 0.1),
                    (float) (box.width() + 0.2), (float) (box.height() + 0.2)));
            try (OutputStream out = form.getStream().createOutputStream(COSName.FLATE_DECODE)) {
                out.write(content.bytes());
            }
            resources.put(COSName.getPDFName(name), form);
        }
        return name;
    }

    /** The resource name of a text face. */
    String face(Text.Style style) throws IOException {
        String name = "T" + (style.ordinal() + 1);
        if (!faces.containsKey(style)) {
            PDType0Font font = PDType0Font.load(document, text.program(style), true);
            faces.put(style, font);
            resources.put(COSName.getPDFName(name), font);
        }
        return name;
    }

    byte[] encode(String words, Text.Style style) throws IOException {
        PDType0Font font = faces.get(style);
        words.codePoints().forEach(font::addToSubset);
        return font.encode(words);
    }

    /** Embeds what has been used; to be called once, after the last page. */
    void subset() throws IOException {
        for (PDType0Font font : faces.values()) {
            font.subset();
        }
    }
}
