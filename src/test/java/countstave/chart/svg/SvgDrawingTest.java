package countstave.chart.svg;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.chart.ChartOptions;
import countstave.chart.ChartWriter;
import countstave.chart.font.TextFont;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.count.BarCounts;
import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.count.Unplayed;
import countstave.count.Words;
import countstave.grid.PlanOptions;
import countstave.grid.Planner;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.Selection;
import countstave.score.Swing;
import countstave.score.TimeOptions;
import countstave.score.Timeline;
import countstave.testing.Snippets;
import countstave.time.Duration;
import countstave.time.Offset;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The drawing read back as XML: the shapes of the layout, in their places, with what a page of the web finds them by. */
class SvgDrawingTest {

    private static final double UNITS = 10;
    private static final Pattern FACE = Pattern.compile("@font-face\\{font-family:(countstave-[0-9a-f]{8})((?:;font-[a-z:]+)*)"
            + ";src:url\\(data:font/ttf;base64,([A-Za-z0-9+/=]+)\\)}");

    private static Score score() {
        Snippets.Builder bars = Snippets.in("4/4").title("Salt &amp; &lt;Sand&gt;", "A. Composer").percussion().tempo(66);
        for (int i = 0; i < 6; i++) {
            bars.bar("16 16 16 16 8 8 3:2[8 8 8] 4 / 4 r4 4 4").bar("5:4[16 16 16 16 16] 4 8. 16 r4").bar("r1").bar("8 8 8 8 2");
        }
        return Snippets.read(bars.xml());
    }

    private static PartCounts counts(Score score, Swing swing) {
        return Words.of(Planner.plan(Timeline.of(score.parts().get(0), Selection.ALL,
                new TimeOptions(PulseChoice.BY_METER, null, swing)), PlanOptions.DEFAULT), CountingSystem.named("numbers"));
    }

    private static Chart chart(Score score, Swing swing) {
        return ChartWriter.layout(List.of(counts(score, swing)), score, ChartOptions.standard().withUnplayed(Unplayed.ALL));
    }

    private static Document xml(String page) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder().parse(new ByteArrayInputStream(page.getBytes(StandardCharsets.UTF_8)));
    }

    private static List<Element> elements(Document page, String name) {
        NodeList nodes = page.getElementsByTagNameNS("http://www.w3.org/2000/svg", name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    private static double number(Element element, String attribute) {
        return Double.parseDouble(element.getAttribute(attribute));
    }

    @Test
    void everyPageIsADocumentOfItsSize() throws Exception {
        Chart chart = chart(score(), null);
        List<String> pages = SvgDrawing.pages(chart);
        assertTrue(pages.size() > 1, "several pages");
        assertEquals(chart.pages().size(), pages.size());
        for (int i = 0; i < pages.size(); i++) {
            Element root = xml(pages.get(i)).getDocumentElement();
            assertEquals("210mm 297mm", root.getAttribute("width") + " " + root.getAttribute("height"));
            // A4 in tenths of a space of 1.75 mm
            assertEquals("0 0 1200 1697.14", root.getAttribute("viewBox"));
            assertEquals("Salt & <Sand> (Drums), page " + (i + 1) + " of " + pages.size(),
                    elements(xml(pages.get(i)), "title").get(0).getTextContent());
        }
    }

    @Test
    void theSameScoreGivesTheSameText() {
        assertEquals(SvgDrawing.pages(chart(score(), null)), SvgDrawing.pages(chart(score(), null)));
        assertEquals(SvgDrawing.inline(chart(score(), null)), SvgDrawing.inline(chart(score(), null)));
    }

    /** SVG 1.1, 7.6: rotate turns clockwise around the given point, since y grows downwards. */
    @Test
    void wordsThatClimbAreTurnedAroundTheirAnchor() throws Exception {
        Text climbing = new Text("gliss.", 20, 30, 1.4, Text.Style.ITALIC, Text.Anchor.MIDDLE, Role.GLISSANDO, null, 1);
        Text level = new Text("gliss.", 40, 30, 1.4, Text.Style.ITALIC, Text.Anchor.MIDDLE, Role.GLISSANDO, null);
        Chart chart = new Chart(new Chart.About("t", "", "s", "en"), new Chart.Paper(2, 200, 100), List.of(new Chart.Page(List.of(climbing, level), List.of())),
                List.of(), List.of());
        List<Element> texts = elements(xml(SvgDrawing.pages(chart).get(0)), "text");
        assertEquals("rotate(-45 200 200)", texts.get(0).getAttribute("transform"));
        assertEquals("200 200", texts.get(0).getAttribute("x") + " " + texts.get(0).getAttribute("y"));
        assertEquals("", texts.get(1).getAttribute("transform"));
    }

    /** Words and signs stand where the layout has put them; y grows downwards. */
    @Test
    void everyWordAndSignStandsInItsPlace() throws Exception {
        Chart chart = chart(score(), null);
        double height = chart.paper().height() / chart.paper().space();
        List<String> pages = SvgDrawing.pages(chart);
        for (int i = 0; i < pages.size(); i++) {
            Document page = xml(pages.get(i));
            List<Text> texts = shapes(chart.pages().get(i), Text.class);
            List<Element> drawn = elements(page, "text");
            assertEquals(texts.size(), drawn.size());
            for (int k = 0; k < texts.size(); k++) {
                assertEquals(texts.get(k).string(), drawn.get(k).getTextContent());
                assertEquals(texts.get(k).x() * UNITS, number(drawn.get(k), "x"), 0.006);
                assertEquals((height - texts.get(k).y()) * UNITS, number(drawn.get(k), "y"), 0.006);
                assertEquals(texts.get(k).size() * UNITS, number(drawn.get(k), "font-size"), 0.006);
            }
            List<Glyph> glyphs = shapes(chart.pages().get(i), Glyph.class);
            List<Element> uses = elements(page, "use");
            assertEquals(glyphs.size(), uses.size());
            for (int k = 0; k < glyphs.size(); k++) {
                assertEquals("#countstave-" + glyphs.get(k).name(), uses.get(k).getAttribute("xlink:href"));
                if (glyphs.get(k).scale() == 1) {
                    assertEquals(glyphs.get(k).x() * UNITS, number(uses.get(k), "x"), 0.006);
                    assertEquals((height - glyphs.get(k).y()) * UNITS, number(uses.get(k), "y"), 0.006);
                }
            }
            // what is neither a word nor a sign is a path, beside the outlines of the signs
            Set<String> names = new HashSet<>();
            glyphs.forEach(g -> names.add(g.name()));
            List<Element> paths = elements(page, "path");
            List<Line> lines = shapes(chart.pages().get(i), Line.class);
            assertEquals(chart.pages().get(i).shapes().size() - texts.size() - glyphs.size() - lines.size() + names.size(),
                    paths.stream().filter(p -> !p.hasAttribute("stroke")).count());
            everyLineStandsInItsPlace(lines, paths, height);
        }
    }

    /** Several lines of one thickness may be one path. */
    private static void everyLineStandsInItsPlace(List<Line> lines, List<Element> paths, double height) {
        int next = 0;
        for (Element path : paths.stream().filter(p -> p.hasAttribute("stroke")).toList()) {
            for (String drawn : path.getAttribute("d").substring(1).split("M")) {
                Line line = lines.get(next++);
                double[] at = Stream.of(drawn.split("[ L]")).mapToDouble(Double::parseDouble).toArray();
                assertArrayEquals(new double[] {line.x1() * UNITS, (height - line.y1()) * UNITS, line.x2() * UNITS,
                    (height - line.y2()) * UNITS}, at, 0.006);
                assertEquals(line.thickness() * UNITS, number(path, "stroke-width"), 0.006);
            }
        }
        assertEquals(lines.size(), next);
    }

    private static <T extends Shape> List<T> shapes(Chart.Page page, Class<T> kind) {
        return page.shapes().stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    /** Each sign is defined once in every page that uses it, and none in one that does not. */
    @Test
    void signsAreDefinedWhereTheyAreUsed() throws Exception {
        for (String text : SvgDrawing.pages(chart(score(), null))) {
            Document page = xml(text);
            List<String> defined = elements(page, "path").stream().map(p -> p.getAttribute("id")).filter(i -> !i.isEmpty()).toList();
            Set<String> used = new TreeSet<>();
            elements(page, "use").forEach(u -> used.add(u.getAttribute("xlink:href").substring(1)));
            assertEquals(List.copyOf(used), defined);
        }
    }

    /** OpenType specification: a cmap gives each letter its glyph, hmtx its width; both as in the whole font. */
    @Test
    void fontsInsideHoldTheLettersWithTheirWidths() throws Exception {
        Chart chart = chart(score(), null);
        List<String> pages = SvgDrawing.pages(chart);
        for (int i = 0; i < pages.size(); i++) {
            TreeMap<String, TrueTypeFont> faces = faces(pages.get(i));
            for (Text text : shapes(chart.pages().get(i), Text.class)) {
                String face = switch (text.style()) {
                    case REGULAR -> "";
                    case BOLD -> ";font-weight:bold";
                    case ITALIC -> ";font-style:italic";
                    case BOLD_ITALIC -> ";font-weight:bold;font-style:italic";
                };
                TrueTypeFont font = faces.get(face);
                double width = 0;
                for (int c : text.string().codePoints().toArray()) {
                    int glyph = font.getUnicodeCmapLookup().getGlyphId(c);
                    assertNotEquals(0, glyph, "no " + Character.toString(c) + " in " + face);
                    width += font.getAdvanceWidth(glyph);
                }
                assertEquals(TextFont.sans().width(text.string(), text.size(), text.style()),
                        width / font.getUnitsPerEm() * text.size(), 1e-6);
            }
        }
        assertTrue(pages.get(0).length() < 400_000, "subsets, not fonts of 630 kB: " + pages.get(0).length());
    }

    private static TreeMap<String, TrueTypeFont> faces(String page) throws Exception {
        TreeMap<String, TrueTypeFont> faces = new TreeMap<>();
        Matcher face = FACE.matcher(page);
        while (face.find()) {
            assertTrue(page.contains("font-family=\"" + face.group(1) + ", sans-serif\""), "the family is asked for");
            faces.put(face.group(2), new TTFParser()
                    .parse(new RandomAccessReadBuffer(Base64.getDecoder().decode(face.group(3)))));
        }
        return faces;
    }

    /** Each count of the plan once, with its part, its bar and the moment at which it is said; swung ones too. */
    @Test
    void aPageOfTheWebFindsEveryCount() throws Exception {
        for (Swing swing : new Swing[] {null, Swing.triplet(Duration.of(1, 8))}) {
            Score score = score();
            PartCounts counts = counts(score, swing);
            List<String> planned = new ArrayList<>();
            boolean moved = false;
            for (BarCounts bar : counts.bars()) {
                TreeMap<Offset, String> row = new TreeMap<>();
                bar.segments().forEach(s -> s.counts().forEach(c -> row.put(c.at(),
                        (c.played() ? "played " : "unplayed ") + c.say())));
                row.forEach((at, say) -> planned.add(bar.bar().index() + " " + at + " " + say));
                moved |= row.keySet().stream().anyMatch(at -> !bar.timeline().writtenAt(at).equals(at));
            }
            assertEquals(swing != null, moved, "only a swung bar is written otherwise than it sounds");
            List<String> found = new ArrayList<>();
            for (String page : SvgDrawing.pages(chart(score, swing))) {
                for (Element text : elements(xml(page), "text")) {
                    if (text.getAttribute("class").startsWith("count ")) {
                        assertEquals(score.parts().get(0).id(), text.getAttribute("data-part"));
                        found.add(text.getAttribute("data-bar") + " " + text.getAttribute("data-at") + " "
                                + text.getAttribute("class").substring(6) + " " + text.getTextContent());
                    }
                }
            }
            assertEquals(planned, found);
        }
    }

    /** Heads are found at the moments of their attacks, and stand right above the counts of these. */
    @Test
    void headsAreFoundLikeTheirCounts() throws Exception {
        int notes = 0;
        for (String text : SvgDrawing.pages(chart(score(), Swing.triplet(Duration.of(1, 8))))) {
            Document page = xml(text);
            for (Element use : elements(page, "use")) {
                if (use.getAttribute("class").equals("note")) {
                    Element count = elements(page, "text").stream().filter(t -> t.getAttribute("class").equals("count played")
                            && t.getAttribute("data-bar").equals(use.getAttribute("data-bar"))
                            && t.getAttribute("data-at").equals(use.getAttribute("data-at"))).findFirst().orElseThrow();
                    assertEquals(number(count, "x"), number(use, "x") + 6, 2, "the middle of the head");
                    notes++;
                }
            }
        }
        assertTrue(notes > 100, "heads: " + notes);
    }

    /** Every bar has its rectangle, behind everything, and all its counts stand in it. */
    @Test
    void barsCanBeClicked() throws Exception {
        List<String> bars = new ArrayList<>();
        for (String text : SvgDrawing.pages(chart(score(), null))) {
            Document page = xml(text);
            for (Element bar : elements(page, "rect")) {
                if (!bar.getAttribute("class").equals("bar")) {
                    continue;
                }
                assertEquals("none all", bar.getAttribute("fill") + " " + bar.getAttribute("pointer-events"));
                assertEquals(Integer.parseInt(bar.getAttribute("data-bar")) + 1, Integer.parseInt(bar.getAttribute("data-number")));
                bars.add(bar.getAttribute("data-bar"));
                for (Element count : elements(page, "text")) {
                    boolean inside = number(count, "x") > number(bar, "x")
                            && number(count, "x") < number(bar, "x") + number(bar, "width")
                            && number(count, "y") > number(bar, "y") && number(count, "y") < number(bar, "y") + number(bar, "height");
                    if (count.getAttribute("class").startsWith("count ")) {
                        assertEquals(count.getAttribute("data-bar").equals(bar.getAttribute("data-bar")), inside);
                    }
                }
            }
        }
        assertEquals(java.util.stream.IntStream.range(0, 24).mapToObj(Integer::toString).toList(), bars);
    }

    @Test
    void severalPagesInOneShareFontsAndSigns() throws Exception {
        Chart chart = chart(score(), null);
        SvgInline inline = SvgDrawing.inline(chart);
        assertEquals(chart.pages().size(), inline.pages().size());
        Document whole = xml("<div>" + inline.head() + String.join("", inline.pages()) + "</div>");
        List<String> ids = elements(whole, "path").stream().map(p -> p.getAttribute("id")).filter(i -> !i.isEmpty()).toList();
        assertEquals(ids.size(), Set.copyOf(ids).size(), "an id stands once in a page");
        for (Element use : elements(whole, "use")) {
            assertTrue(ids.contains(use.getAttribute("xlink:href").substring(1)));
        }
        for (String page : inline.pages()) {
            assertFalse(page.contains("@font-face") || page.contains("<?xml"), "fonts stand in the head");
        }
        assertEquals(3, faces(inline.head() + inline.pages().get(0)).size());
    }

    /** XML 1.0, section 2.2: neither control characters nor lone surrogates. */
    @Test
    void noTextSpoilsTheDocument() {
        assertEquals("a&amp;b&lt;c&gt;&quot;\uFFFD\uFFFD\uFFFD", SvgPath.escape("a&b<c>\"\u0001\uD800\uFFFE"));
        assertEquals("\uD83D\uDE00", SvgPath.escape("\uD83D\uDE00"));
    }

    /** Unplayed counts are lighter, as in print. */
    @Test
    void whatNobodyPlaysIsLighter() throws Exception {
        for (Element text : elements(xml(SvgDrawing.pages(chart(score(), null)).get(0)), "text")) {
            String kind = text.getAttribute("class");
            assertEquals(kind.equals("count unplayed") || kind.equals("parenthesis") ? "#595959" : "", text.getAttribute("fill"));
            assertEquals(kind.equals("count played") ? "bold" : kind.startsWith("count") ? "" : text.getAttribute("font-weight"),
                    text.getAttribute("font-weight"));
        }
    }

    @Test
    void aRunOfRestsSaysHowManyBarsItIs() throws Exception {
        String rests = "<attributes><measure-style><multiple-rest>5</multiple-rest></measure-style></attributes>";
        Score score = Snippets.read(Snippets.in("4/4").bar("4 4 4 4").before(rests).bar("r1").bar("r1").bar("r1").bar("r1")
                .bar("r1").bar("4 4 4 4").xml());
        Document page = xml(SvgDrawing.pages(chart(score, null)).get(0));
        List<String> bars = elements(page, "rect").stream().filter(r -> r.getAttribute("class").equals("bar"))
                .map(r -> r.getAttribute("data-bar") + "x" + r.getAttribute("data-bars")).toList();
        assertEquals(List.of("0x", "1x5", "6x"), bars);
        assertTrue(elements(page, "text").stream().anyMatch(t -> t.getAttribute("data-bar").equals("1")
                && t.getTextContent().startsWith("(1 2 3 4)")));
    }

    /** Roles that carry data keep them; a new role of the row of counts must be thought of here. */
    @Test
    void allWordsBelowTheStaffAreFound() {
        Set<Role> row = Set.of(Role.SYLLABLE_PLAYED, Role.SYLLABLE_UNPLAYED, Role.FELT, Role.PARENTHESIS, Role.TICK, Role.TICK_BEAT,
                Role.NOTE);
        for (Chart.Page page : chart(score(), null).pages()) {
            for (Shape shape : page.shapes()) {
                if (row.contains(shape.role()) && shape.at() != null) {
                    long places = page.bars().stream().filter(b -> b.holds(countstave.chart.font.Measures.standard().box(shape)))
                            .count();
                    assertEquals(1, places, shape.toString());
                }
            }
        }
    }
}
