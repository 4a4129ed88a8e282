package countstave.chart.pdf;

import countstave.chart.layout.Chart;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Point;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PageMode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineNode;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/** Draws a chart as PDF. The same chart gives the same bytes: no dates, no random identifiers. */
public final class PdfDrawing {

    private static final double POINTS_PER_MM = 72 / 25.4;

    private final Chart chart;
    private final double scale;

    private PdfDrawing(Chart chart) {
        this.chart = chart;
        this.scale = chart.paper().space() * POINTS_PER_MM;
    }

    /** Writes the document; the stream is left open. */
    public static void write(Chart chart, OutputStream out) throws IOException {
        new PdfDrawing(chart).write(out);
    }

    private void write(OutputStream out) throws IOException {
        try (PDDocument document = new PDDocument()) {
            PdfFonts fonts = new PdfFonts(document);
            PDRectangle size = new PDRectangle((float) (chart.paper().width() * POINTS_PER_MM),
                    (float) (chart.paper().height() * POINTS_PER_MM));
            CRC32 fingerprint = new CRC32();
            List<PDPage> pages = new ArrayList<>();
            for (Chart.Page page : chart.pages()) {
                byte[] content = content(page, fonts);
                fingerprint.update(content);
                PDPage sheet = new PDPage(size);
                sheet.setResources(fonts.resources());
                PDStream stream = new PDStream(document);
                try (OutputStream to = stream.createOutputStream(COSName.FLATE_DECODE)) {
                    to.write(content);
                }
                sheet.setContents(stream);
                document.addPage(sheet);
                pages.add(sheet);
            }
            fonts.subset();
            describe(document);
            addBookmarks(document, pages);
            // stands for the clock in the document's identifier
            document.setDocumentId(fingerprint.getValue());
            document.save(out);
        }
    }

    private void describe(PDDocument document) {
        PDDocumentInformation info = document.getDocumentInformation();
        info.setTitle(chart.about().title());
        if (!chart.about().composer().isBlank()) {
            info.setAuthor(chart.about().composer());
        }
        info.setSubject(chart.about().subject());
        info.setCreator("countstave");
        info.setProducer("countstave");
        document.getDocumentCatalog().setLanguage(chart.about().language());
        PDViewerPreferences preferences = new PDViewerPreferences(new org.apache.pdfbox.cos.COSDictionary());
        preferences.setDisplayDocTitle(true);
        document.getDocumentCatalog().setViewerPreferences(preferences);
    }

    private void addBookmarks(PDDocument document, List<PDPage> pages) {
        if (chart.bookmarks().isEmpty()) {
            return;
        }
        PDDocumentOutline outline = new PDDocumentOutline();
        add(chart.bookmarks(), outline, pages);
        document.getDocumentCatalog().setDocumentOutline(outline);
        document.getDocumentCatalog().setPageMode(PageMode.USE_OUTLINES);
        outline.openNode();
    }

    private void add(List<Chart.Bookmark> bookmarks, PDOutlineNode node, List<PDPage> pages) {
        for (Chart.Bookmark bookmark : bookmarks) {
            PDPageXYZDestination target = new PDPageXYZDestination();
            target.setPage(pages.get(bookmark.page()));
            target.setTop((int) Math.round(bookmark.top() * scale));
            target.setLeft(0);
            PDOutlineItem item = new PDOutlineItem();
            item.setTitle(bookmark.text());
            item.setDestination(target);
            node.addLast(item);
            add(bookmark.inner(), item, pages);
        }
    }

    private byte[] content(Chart.Page page, PdfFonts fonts) throws IOException {
        Content content = new Content();
        content.scalePage(scale);
        for (Shape shape : page.shapes()) {
            content.gray(shape.isLight() ? Shape.LIGHT : 0);
            draw(shape, content, fonts);
        }
        return content.bytes();
    }

    private static void draw(Shape shape, Content content, PdfFonts fonts) throws IOException {
        if (shape instanceof Glyph glyph) {
            content.form(fonts.form(glyph.name()), glyph.scale(), glyph.x(), glyph.y());
        } else if (shape instanceof Line line) {
            content.line(line.x1(), line.y1(), line.x2(), line.y2(), line.thickness());
        } else if (shape instanceof Polygon polygon) {
            content.polygon(polygon.points());
        } else if (shape instanceof Curve curve) {
            draw(curve, content);
        } else if (shape instanceof Text text) {
            String face = fonts.face(text.style());
            content.text(face, text.size(), fonts.text().start(text), text.angle(), fonts.encode(text.string(), text.style()));
        }
    }

    private static void draw(Curve curve, Content content) {
        List<Point> p = curve.outline();
        content.moveTo(p.get(0).x(), p.get(0).y());
        content.curveTo(p.get(1).x(), p.get(1).y(), p.get(2).x(), p.get(2).y(), p.get(3).x(), p.get(3).y());
        content.lineTo(p.get(4).x(), p.get(4).y());
        content.curveTo(p.get(5).x(), p.get(5).y(), p.get(6).x(), p.get(6).y(), p.get(7).x(), p.get(7).y());
        content.fill();
    }
}
