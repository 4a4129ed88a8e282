package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.BarCounts;
import countstave.count.PartCounts;
import countstave.score.Meter;
import countstave.score.Part;
import countstave.score.Score;
import countstave.testing.Rhythms;
import countstave.time.Offset;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The PDF itself, read back with PDFBox. */
class ChartPdfTest {

    private static final Meter FOUR_FOUR = Meter.of(4, 4);

    private static Rhythms score() {
        return Rhythms.score().title("Příliš žluťoučký kůň · Ξεσκεπάζω · Съешь же ещё")
                .times(4, FOUR_FOUR, 60, "A|16 16 16 16 8 8 4 16 16 16 16",
                        "16 16 16 16 3:2[8 8 8] 5:4[16 16 16 16 16] 6:4[16 16 16 16 16 16]", "5:4[4 4 4 4 4]",
                        "B|11:8[32 32 32 32 32 32 32 32 32 32 32] 4 7:4[16 16 16 16 16 16 16] 4", "4 r4 3:2[4 3:2[8 8 8] 4]");
    }

    private static byte[] pdf(Rhythms rhythms, ChartOptions options) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ChartWriter.write(List.of(rhythms.counts()), rhythms.build(), options, out);
        return out.toByteArray();
    }

    /** ISO 216 A4 and ANSI Letter, in points of 1/72 inch. */
    @ParameterizedTest
    @CsvSource({"A4, false, 595.28, 841.89", "A4, true, 841.89, 595.28", "LETTER, false, 612, 792", "LETTER, true, 792, 612"})
    void pagesHaveTheSizeAskedFor(ChartOptions.Paper paper, boolean across, float width, float height)
            throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(score(), ChartOptions.standard().withPaper(paper, across)))) {
            for (PDPage page : document.getPages()) {
                assertEquals(width, page.getMediaBox().getWidth(), 0.01);
                assertEquals(height, page.getMediaBox().getHeight(), 0.01);
            }
        }
    }

    @Test
    void fontsAreEmbeddedAndHoldOnlyWhatIsUsed() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(score(), ChartOptions.standard()))) {
            int fonts = 0;
            for (COSName name : document.getPage(0).getResources().getFontNames()) {
                PDFont font = document.getPage(0).getResources().getFont(name);
                assertTrue(font.isEmbedded(), font.getName());
                // ISO 32000-1, 9.6.4: a subset's name begins with six capitals and a plus sign
                assertTrue(font.getName().matches("[A-Z]{6}\\+.*"), font.getName());
                assertNotNull(font.getCOSObject().getDictionaryObject(COSName.TO_UNICODE));
                fonts++;
            }
            assertEquals(3, fonts);
        }
    }

    @Test
    void theSameScoreGivesTheSameBytes() throws IOException {
        assertArrayEquals(pdf(score(), ChartOptions.standard()), pdf(score(), ChartOptions.standard()));
    }

    /** What a reader selects and copies: the counts in playing order, as the plan has them. */
    @Test
    void theTextHoldsTheCountsInPlayingOrder() throws IOException {
        List<String> planned = new ArrayList<>();
        for (BarCounts bar : score().counts().bars()) {
            TreeMap<Offset, String> row = new TreeMap<>();
            bar.segments().forEach(s -> s.counts().forEach(c -> row.put(c.at(), c.say())));
            bar.segments().forEach(s -> s.segment().felt().forEach(at -> row.put(at, "·")));
            planned.addAll(row.values());
        }
        List<String> read = new ArrayList<>();
        float syllableSize = (float) (2 * ChartOptions.standard().spaceMm() * 72 / 25.4);
        try (PDDocument document = Loader.loadPDF(pdf(score(), ChartOptions.standard()))) {
            new PDFTextStripper() {
                @Override
                protected void writeString(String text, List<TextPosition> positions) {
                    StringBuilder row = new StringBuilder();
                    TextPosition previous = null;
                    for (TextPosition position : positions) {
                        if (Math.abs(position.getYScale() - syllableSize) < 0.05) {
                            if (previous != null && position.getX() > previous.getX() + previous.getWidth() + 1) {
                                row.append(' ');
                            }
                            row.append(position.getUnicode());
                            previous = position;
                        }
                    }
                    for (String token : row.toString().replaceAll("[()]", " ").trim().split("\\s+")) {
                        if (!token.isEmpty()) {
                            read.add(token);
                        }
                    }
                }
            }.getText(document);
        }
        assertEquals(planned, read);
    }

    @Test
    void titlesOfAllEuropeCanBeSearched() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(score(), ChartOptions.standard()))) {
            String text = new PDFTextStripper().getText(document);
            assertTrue(text.contains("Příliš žluťoučký kůň · Ξεσκεπάζω · Съешь же ещё"), text.substring(0, 200));
        }
    }

    @Test
    void theDocumentSaysWhatItIs() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(score(), ChartOptions.standard()))) {
            assertEquals(score().build().title(), document.getDocumentInformation().getTitle());
            assertEquals("A. Composer", document.getDocumentInformation().getAuthor());
            assertEquals("en", document.getDocumentCatalog().getLanguage());
            assertNull(document.getDocumentInformation().getCreationDate());
            assertTrue(document.getDocumentCatalog().getViewerPreferences().displayDocTitle());
        }
    }

    /** One bookmark a part, and in it one for each rehearsal mark. */
    @Test
    void bookmarksLeadToPartsAndRehearsalMarks() throws IOException {
        Rhythms rhythms = score();
        Part first = rhythms.build().parts().get(0);
        Part second = new Part("P2", "Bass", 1, first.bars(), 0);
        Score score = new Score("Two", "", "two.musicxml", List.of(first, second), List.of());
        List<PartCounts> counts = List.of(Rhythms.counts(first, "numbers"), Rhythms.counts(second, "numbers"));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ChartWriter.write(counts, score, ChartOptions.standard(), out);
        try (PDDocument document = Loader.loadPDF(out.toByteArray())) {
            List<String> parts = new ArrayList<>();
            List<String> marks = new ArrayList<>();
            for (PDOutlineItem part : document.getDocumentCatalog().getDocumentOutline().children()) {
                parts.add(part.getTitle());
                assertNotNull(part.findDestinationPage(document));
                for (PDOutlineItem mark : part.children()) {
                    marks.add(mark.getTitle());
                }
            }
            assertEquals(List.of("Drums", "Bass"), parts);
            assertEquals(16, marks.size());
            assertEquals(List.of("A", "B"), marks.subList(0, 2));
            assertTrue(document.getNumberOfPages() >= 2);
        }
    }

    @Test
    void everyPageIsLegibleOnItsOwn() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(score(), ChartOptions.standard().withLarge(true)))) {
            assertTrue(document.getNumberOfPages() > 1);
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                String text = stripper.getText(document);
                assertTrue(text.contains("Drums"), text);
                assertTrue(text.contains("7 is said"), text);
                assertTrue(text.contains(page + " / " + document.getNumberOfPages()), text);
            }
        }
    }

    @Test
    void aLetterThatTheFontLacksIsLeftOutAndReportedOnce() throws IOException {
        Rhythms rhythms = Rhythms.score().title("Test 譜 譜").bars(FOUR_FOUR, 60, "4 4 4 4");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        List<String> notes = ChartWriter.write(List.of(rhythms.counts()), rhythms.build(), ChartOptions.standard(), out);
        assertEquals(1, notes.stream().filter(n -> n.contains("U+8B5C")).count(), notes.toString());
        try (PDDocument document = Loader.loadPDF(out.toByteArray())) {
            String text = new PDFTextStripper().getText(document);
            assertTrue(text.contains("Test") && !text.contains("\uFFFD"), text);
        }
    }

    /** The target of the chart: a hundred bars of drums under 400 kB. */
    @Test
    void aHundredBarsStaySmall() throws IOException {
        Rhythms rhythms = Rhythms.score().times(25, FOUR_FOUR, 60, "16 16 16 16 8 8 4 16 16 16 16",
                "16 16 16 16 3:2[8 8 8] 5:4[16 16 16 16 16] 6:4[16 16 16 16 16 16]", "5:4[4 4 4 4 4]",
                "11:8[32 32 32 32 32 32 32 32 32 32 32] 4 7:4[16 16 16 16 16 16 16] 4");
        int size = pdf(rhythms, ChartOptions.standard()).length;
        assertTrue(size < 400_000, size + " bytes");
        assertFalse(size < 10_000, size + " bytes: is anything drawn?");
    }
}
