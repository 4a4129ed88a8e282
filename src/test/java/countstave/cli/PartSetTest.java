package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A set of parts to hand out: one chart a part, the parts that fit in each score, what stands at the head of the page. */
class PartSetTest {

    @TempDir
    Path folder;

    private static Run run(Object... words) {
        return Run.of(List.of(words).stream().map(Object::toString).toArray(String[]::new));
    }

    /** A score of parts with these names, four quarters in each of its bars. */
    private static String xml(String head, int bars, String... parts) {
        StringBuilder list = new StringBuilder("<score-partwise version=\"4.0\">" + head + "<part-list>");
        StringBuilder music = new StringBuilder();
        for (int i = 1; i <= parts.length; i++) {
            list.append("<score-part id=\"P" + i + "\"><part-name>" + parts[i - 1] + "</part-name>"
                    + (i == 1 ? "<score-instrument id=\"A\"><instrument-name>Shaker</instrument-name></score-instrument>"
                            + "<score-instrument id=\"B\"><instrument-name>Rim, high</instrument-name></score-instrument>"
                            + "<score-instrument id=\"C\"><instrument-name>Shaker</instrument-name></score-instrument>" : "")
                    + "</score-part>");
            music.append("<part id=\"P" + i + "\">");
            for (int bar = 1; bar <= bars; bar++) {
                music.append("<measure number=\"" + bar + "\">" + (bar > 1 ? "" : "<attributes><divisions>1</divisions><time>"
                        + "<beats>4</beats><beat-type>4</beat-type></time></attributes><sound tempo=\"90\"/>")
                        + ("<note><pitch><step>C</step><octave>5</octave></pitch><duration>1</duration><type>quarter</type>"
                                + "</note>").repeat(4) + "</measure>");
            }
            music.append("</part>");
        }
        return list + "</part-list>" + music + "</score-partwise>";
    }

    private Path score(String name, String head, String... parts) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, xml(head, 2, parts));
    }

    private static Set<String> names(Path folder) throws IOException {
        return Run.tree(folder).keySet();
    }

    private static String page(Path pdf, int number) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setStartPage(number);
            stripper.setEndPage(number);
            return stripper.getText(document);
        }
    }

    @Test
    void oneChartAPartWithTitleAndPartOnEveryPage() throws IOException {
        Path file = Files.writeString(folder.resolve("band.musicxml"), xml("<movement-title>Weir Song</movement-title>", 150,
                "Flute", "Bass"));
        Path out = folder.resolve("new/set");
        Run run = run("annotate", file, "--as", "chart", "--each-part", "-o", out);
        assertEquals(0, run.code(), run.err());
        assertEquals("", run.err());
        assertEquals(Set.of("band_Flute.pdf", "band_Bass.pdf"), names(out));
        assertEquals("wrote " + out.resolve("band_Flute.pdf") + "\nwrote " + out.resolve("band_Bass.pdf") + "\n",
                run.out().replace("\r", ""));
        for (String part : List.of("Flute", "Bass")) {
            Path pdf = out.resolve("band_" + part + ".pdf");
            try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
                assertTrue(document.getNumberOfPages() > 1);
                assertEquals(part, document.getDocumentInformation().getSubject());
                for (int i = 1; i <= document.getNumberOfPages(); i++) {
                    String text = page(pdf, i);
                    assertTrue(text.contains("Weir Song") && text.contains(part), text);
                    assertFalse(text.contains(part.equals("Bass") ? "Flute" : "Bass"), text);
                    assertTrue(text.contains(i + " / " + document.getNumberOfPages()), text);
                }
            }
        }
        // each is the page that the part alone would be
        Path alone = folder.resolve("alone.pdf");
        assertEquals(0, run("annotate", file, "--part", "Bass", "-o", alone).code());
        assertEquals(Files.readString(alone, StandardCharsets.ISO_8859_1),
                Files.readString(out.resolve("band_Bass.pdf"), StandardCharsets.ISO_8859_1));
    }

    @Test
    void setsOfManyScoresKeepTheirTree() throws IOException {
        score("in/a.xml", "", "Flute", "Bass");
        score("in/low/b.musicxml", "", "Bass");
        Files.writeString(folder.resolve("in/bad.musicxml"), "<score-partwise>");
        Path out = folder.resolve("out");
        Run run = run("annotate", folder.resolve("in"), "--as", "chart", "--each-part", "-o", out);
        assertEquals(2, run.code());
        assertEquals("countstave: 2 scores done, 1 failed", run.summary());
        assertEquals(Set.of("a_Flute.pdf", "a_Bass.pdf", "low/b_Bass.pdf"), names(out));
        // scores called alike but for the ending
        score("in/a.musicxml", "", "Flute");
        Path again = folder.resolve("again");
        Run twins = run("annotate", folder.resolve("in") + "/a*", "--as", "chart", "--each-part", "-o", again);
        assertEquals(Set.of("a.xml_Flute.pdf", "a.xml_Bass.pdf", "a.musicxml_Flute.pdf"), names(again));
        assertTrue(twins.told().get(0).contains("have one name but for the ending"), twins.err());
    }

    /** Names that every locale and file system can write, each once, whatever is chosen. */
    @Test
    void fileNamesAreSafeAndDifferent() throws IOException {
        Path file = score("w.musicxml", "", "Horn", "Fl\u00f6te / \u7b1b", "Horn", "../up");
        Path out = folder.resolve("out");
        assertEquals(0, run("annotate", file, "--as", "chart", "--each-part", "--part", "3,4,2", "-o", out).code());
        assertEquals(Set.of("w_Horn-3.pdf", "w_up.pdf", "w_Flote.pdf"), names(out));
        assertFalse(Files.exists(folder.resolve("up.pdf")));
    }

    /** A text font has no flat sign; the commonest part names have one. */
    @Test
    void signsOfMusicInTheHead() throws IOException {
        Path file = score("a.musicxml", "<movement-title>Song in E\u266d</movement-title>", "Clarinet in B\u266d");
        Path out = folder.resolve("out");
        Run run = run("annotate", file, "--as", "chart", "--each-part", "-o", out);
        assertEquals("", run.err());
        String page = page(out.resolve("a_Clarinet-in-Bb.pdf"), 1);
        assertTrue(page.contains("Clarinet in B") && page.contains("Song in E"), page);
        assertFalse(page.contains("\ufffd"), page);
    }

    @Test
    void nothingOfASetIsReplacedUnasked() throws IOException {
        Path file = score("a.musicxml", "", "Flute", "Bass");
        Path out = Files.createDirectory(folder.resolve("out"));
        Files.writeString(out.resolve("a_Bass.pdf"), "mine");
        refused(run("annotate", file, "--as", "chart", "--each-part", "-o", out), "a_Bass.pdf is already there");
        assertEquals(Set.of("a_Bass.pdf"), names(out));
        assertEquals(0, run("annotate", file, "--as", "chart", "--each-part", "-o", out, "--force").code());
        assertTrue(Files.readString(out.resolve("a_Bass.pdf"), StandardCharsets.ISO_8859_1).startsWith("%PDF"));
    }

    @Test
    void aSetNeedsAFolderAndAChart() throws IOException {
        Path file = score("a.musicxml", "", "Flute");
        refused(run("annotate", file, "--as", "chart", "--each-part"), "such as " + folder.resolve("a_PART.pdf"), "-o beside");
        refused(run("annotate", file, "--each-part", "-o", folder.resolve("x")), "add --as chart");
        refused(run("annotate", file, "--as", "part", "--each-part", "-o", folder.resolve("x")), "add --as chart");
        refused(run("annotate", file, "--each-part", "-o", folder.resolve("x.pdf")),
                "the outputs of several parts go into a folder: name a folder with -o, not the file");
        assertEquals(Set.of("a.musicxml"), names(folder));
        assertEquals(0, run("annotate", file, "--as", "chart", "--each-part", "-o", "beside").code());
        assertEquals(Set.of("a.musicxml", "a_Flute.pdf"), names(folder));
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Countstave.run(new String[] {"annotate", "-", "--as", "chart", "--each-part", "-o",
            folder.resolve("in") + "/"}, new ByteArrayInputStream(Files.readAllBytes(file)),
                new PrintStream(new ByteArrayOutputStream()), new PrintStream(err));
        assertEquals(0, code, err.toString());
        assertEquals(Set.of("score_Flute.pdf"), names(folder.resolve("in")));
    }

    @Test
    void overManyScoresThePartsThatFit() throws IOException {
        Path in = folder.resolve("in");
        score("in/a.musicxml", "", "Violin I", "Violin II", "Drums");
        score("in/b.musicxml", "", "Drums");
        Path out = folder.resolve("out");
        Run run = run("annotate", in, "--as", "chart", "--each-part", "--part", "Violin*", "-o", out);
        assertEquals(0, run.code(), run.err());
        assertEquals("countstave: 1 score done, 1 left out", run.summary());
        assertEquals(List.of("countstave: " + in.resolve("b.musicxml") + ": there is no part 'Violin*', so it is left out; its"
                + " parts are 1 = Drums"), run.told().stream().filter(l -> !l.contains("has no title")).toList());
        assertEquals(Set.of("a_Violin-I.pdf", "a_Violin-II.pdf"), names(out));

        Run counted = run("count", in, "--part", "Violin*,P3", "--format", "json");
        assertEquals(0, counted.code());
        assertTrue(counted.out().contains("Violin II") && counted.out().contains("\"P3\"")
                && !counted.out().contains("b.musicxml"), counted.out());

        Run required = run("annotate", in, "--part", "Violin*", "--part-required", "-o", folder.resolve("out2"));
        assertEquals(2, required.code());
        assertEquals("countstave: 1 score done, 1 failed", required.summary());
        assertEquals(Set.of("a.musicxml"), names(folder.resolve("out2")));

        // a name that fits nowhere is a slip
        Run nowhere = run("count", in, "--part", "Vioiln*");
        assertEquals(2, nowhere.code());
        assertEquals("", nowhere.out());
        assertTrue(nowhere.told().get(2).contains("no score has what --part asks for"), nowhere.err());
        // one score that is named is not passed over
        refused(run("count", in.resolve("b.musicxml"), "--part", "Violin*"), "there is no part 'Violin*'; the parts are 1 = Drums");
        refused(run("count", in, "--part-required"), "name one with --part");
    }

    @Test
    void partsAreListed() throws IOException {
        score("in/a.musicxml", "<movement-title>Weir Song</movement-title><identification><creator type=\"composer\">N. N."
                + "</creator></identification>", "Shakers", "Bass");
        Run run = run("parts", folder.resolve("in/a.musicxml"));
        assertEquals(0, run.code(), run.err());
        assertEquals("""
                Weir Song \u00b7 N. N.

                   id  name     staves  attacks  instruments
                1  P1  Shakers       1        8  Shaker; Rim, high
                2  P2  Bass          1        8  -
                """, run.out());
        score("in/b.musicxml", "", "Bass");
        Files.writeString(folder.resolve("in/c.musicxml"), "<score-partwise>");
        Run many = run("parts", folder.resolve("in"));
        assertEquals(2, many.code());
        assertEquals("countstave: 2 scores done, 1 failed", many.summary());
        assertTrue(many.out().contains("b.musicxml\n=="), many.out());
        assertEquals(run.out(), many.out().substring(many.out().indexOf("Weir"), many.out().indexOf("8  -\n") + 5));
        refused(run("parts", folder.resolve("none.mxl")), "no such file");
        refused(run("parts"), "SCORE");
        // the counts' own part is no part of the score
        assertEquals(0, run("annotate", folder.resolve("in/a.musicxml"), "--as", "part", "-o",
                folder.resolve("p.musicxml")).code());
        assertEquals(run.out(), run("parts", folder.resolve("p.musicxml")).out());
    }

    /** The tables of the demo scores, as their parts are described in scores/README.md. */
    @Test
    void aKitsInstrumentsAreWrapped() {
        String out = run("parts", "scores/groove.musicxml").out();
        assertTrue(out.contains("Hi-hat, closed; Hi-hat, open;"), out);
        assertTrue(out.lines().allMatch(line -> line.length() <= 80 && line.equals(line.stripTrailing())), out);
    }

    @Test
    void titleAndComposerOfScoresThatLackThem() throws IOException {
        Path bare = score("movement1.musicxml", "<movement-title>Movement1</movement-title>", "Flute");
        Path pdf = folder.resolve("a.pdf");
        Run told = run("annotate", bare, "-o", pdf);
        assertEquals(List.of("countstave: " + bare + ": has no title, so its file's name is printed; --title gives it one"),
                told.told());
        Run run = run("annotate", bare, "-o", pdf, "--force", "--title", " Weir\n Song ", "--composer", "N. N.");
        assertEquals(0, run.code());
        assertEquals("", run.err());
        String page = page(pdf, 1);
        assertTrue(page.contains("Weir Song") && page.contains("N. N.") && !page.contains("ovement1"), page);
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            assertEquals("Weir Song", document.getDocumentInformation().getTitle());
            assertEquals("N. N.", document.getDocumentInformation().getAuthor());
        }
        Path plan = folder.resolve("plan");
        assertEquals(0, run("practice", bare, "-o", plan, "--title", "Weir Song", "--tracks", "0").code());
        assertTrue(Files.readString(plan.resolve("practice.txt")).startsWith("Weir Song - Flute"));
        assertTrue(Files.readString(plan.resolve("index.html")).contains("Weir Song"));
    }

    @Test
    void aTitleOfItsOwnStays() throws IOException {
        Path pdf = folder.resolve("a.pdf");
        Run run = run("annotate", "scores/song.musicxml", "-o", pdf, "--title", "Other", "--composer", "N. N.");
        assertEquals(0, run.code());
        assertEquals(List.of(
                "countstave: scores/song.musicxml: has a title of its own, 'Salt for the Ferryman': --title is for scores without",
                "countstave: scores/song.musicxml: names its composer, 'Quellhithe house book': --composer is for scores that do"
                        + " not"), run.told());
        assertTrue(page(pdf, 1).contains("Salt for the Ferryman") && !page(pdf, 1).contains("Other"));
        refused(run("annotate", "scores/song.musicxml", "-o", folder.resolve("b.pdf"), "--title", " "), "--title has no word");
        refused(run("annotate", "scores/song.musicxml", "-o", folder.resolve("b.xml"), "--title", "x"),
                "--title is for the printed page");
        refused(run("practice", "scores/song.musicxml", "--composer", "x"), "--composer is for the printed page");
    }

    /** Pages of a large print with a staff size: as without the one that is smaller. */
    @Test
    void largeAndStaffSizeDoNotMultiply() throws IOException {
        assertEquals(drawn("--staff-size", "10.5"), drawn("--large"));
        assertEquals(drawn("--large"), drawn("--large", "--staff-size", "8"));
        assertEquals(drawn("--staff-size", "12"), drawn("--large", "--staff-size", "12"));
        assertFalse(drawn("--staff-size", "12").equals(drawn("--large")));
    }

    private String drawn(String... options) throws IOException {
        Path pdf = folder.resolve("sized.pdf");
        List<Object> words = new ArrayList<>(List.of("annotate", "scores/song.musicxml", "--bars", "1-4", "-o", pdf,
                "--force"));
        words.addAll(List.of(options));
        assertEquals(0, run(words.toArray()).code());
        return Files.readString(pdf, StandardCharsets.ISO_8859_1);
    }

    private static void refused(Run run, String... parts) {
        assertEquals(2, run.code(), run.err());
        assertEquals("", run.out());
        assertEquals(1, run.err().lines().count(), run.err());
        for (String part : parts) {
            assertTrue(run.err().contains(part), () -> "'" + part + "' is not in: " + run.err());
        }
    }
}
