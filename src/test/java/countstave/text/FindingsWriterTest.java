package countstave.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.plain.Phrases;
import countstave.score.Fact;
import countstave.spelling.CheckedFile;
import countstave.spelling.Finding;
import countstave.spelling.Severity;
import countstave.testing.Rules;
import countstave.time.Offset;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** How findings are told that one rule repeats in one file, and what the summary says of all of them. */
class FindingsWriterTest {

    private static final String SENTENCE = "A beam goes on here that did not begin [beam].";

    private static Finding beam(String part, int index, String number) {
        return finding("beam-unmatched", Severity.ERROR, part, index, number);
    }

    private static Finding finding(String rule, Severity severity, String part, int index, String number) {
        return new Finding(Rules.named(rule), severity, new Fact.Place(part, index, number, "1", Offset.ZERO), part, "1", 0,
                phrases -> SENTENCE, null, "");
    }

    /** One finding in each of these bars, whose numbers are their places. */
    private static List<Finding> inBars(int... numbers) {
        return IntStream.of(numbers).mapToObj(n -> beam("Viola", n - 1, String.valueOf(n))).toList();
    }

    private static String told(boolean all, CheckedFile... files) throws IOException {
        StringBuilder out = new StringBuilder();
        FindingsWriter writer = new FindingsWriter(out, all, Phrases.ENGLISH);
        for (CheckedFile file : files) {
            writer.file(file);
        }
        writer.end();
        return out.toString();
    }

    private static CheckedFile file(String name, List<Finding> findings) {
        return new CheckedFile(name, findings, null);
    }

    private static String summary(boolean all, CheckedFile... files) throws IOException {
        String text = told(all, files);
        return text.substring(text.lastIndexOf('\n', text.length() - 2) + 1, text.length() - 1);
    }

    /** A quartet of 432 bars, as a broken exporter writes it: 609 loose beams in each part. */
    private static List<Finding> quartet() {
        List<Finding> findings = new ArrayList<>();
        for (String part : List.of("Violin I", "Violin II", "Viola", "Cello")) {
            for (int i = 0; i < 609; i++) {
                findings.add(beam(part, i % 432, String.valueOf(i % 432 + 1)));
            }
        }
        return findings;
    }

    @Test
    void threePlacesAndHowManyMore() throws IOException {
        assertEquals("""
                quartet.mxl
                  Violin I, bar 1, beat 1, voice 1: error in the file, beam-unmatched
                      A beam goes on here that did not begin [beam].
                      Beam these notes anew, or export the score again.
                  Violin I, bar 2, beat 1, voice 1: error in the file, beam-unmatched
                      A beam goes on here that did not begin [beam].
                  Violin I, bar 3, beat 1, voice 1: error in the file, beam-unmatched
                      A beam goes on here that did not begin [beam].
                      and 2,433 more like it, in bars 1–432

                2,436 errors, 0 warnings, 0 hints: 1 kind in 1 file. All are about the file, not the notation. With --all every one is told.
                """, told(false, file("quartet.mxl", quartet())));
    }

    @Test
    void allTellsEveryOne() throws IOException {
        String text = told(true, file("quartet.mxl", quartet()));
        assertEquals(2436, text.lines().filter(l -> l.strip().equals(SENTENCE)).count());
        assertTrue(text.endsWith("\n\n2,436 errors, 0 warnings, 0 hints: 1 kind in 1 file. All are about the file, not the notation.\n"), text.substring(text.length() - 120));
    }

    @Test
    void threeAreToldAndAFourthIsCounted() throws IOException {
        assertEquals(told(true, file("a.mxl", inBars(1, 2, 3))), told(false, file("a.mxl", inBars(1, 2, 3))));
        assertTrue(told(false, file("a.mxl", inBars(1, 2, 3, 7))).contains("      and 1 more like it, in bar 7\n"));
    }

    /** Each rule and each file is counted for itself; what is told stays in the order of the score. */
    @Test
    void aRuleIsCountedInItsFile() throws IOException {
        List<Finding> mixed = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            mixed.add(beam("Viola", i, String.valueOf(i + 1)));
            mixed.add(finding("tie-loose", Severity.ERROR, "Viola", i, String.valueOf(i + 1)));
        }
        String text = told(false, file("a.mxl", mixed), file("b.mxl", inBars(5, 6, 7)));
        assertEquals(List.of("a.mxl", "  1 beam-unmatched", "  1 tie-loose", "  2 beam-unmatched", "  2 tie-loose",
                "  3 beam-unmatched", "      and 1 more like it, in bar 4", "  3 tie-loose",
                "      and 1 more like it, in bar 4", "b.mxl", "  5 beam-unmatched", "  6 beam-unmatched",
                "  7 beam-unmatched", "11 errors, 0 warnings, 0 hints: 2 kinds in 2 files. 7 of them are about the file, not the notation. With --all every"
                        + " one is told."),
                text.lines().filter(l -> !l.isEmpty() && !l.strip().equals(SENTENCE) && !l.matches(" {6}(Beam|Take) .*"))
                        .map(l -> l.replaceFirst("Viola, bar (\\d), .*, ", "$1 ")).toList());
    }

    private static String places(int... numbers) throws IOException {
        int[] all = IntStream.concat(IntStream.of(1, 1, 1), IntStream.of(numbers)).toArray();
        String text = told(false, file("a.mxl", inBars(all)));
        return text.replaceFirst("(?s).* more like it, in (.*?)\n.*", "$1");
    }

    @Test
    void barsAreListedOrSpanned() throws IOException {
        assertEquals("bar 5", places(5));
        assertEquals("bar 5", places(5, 5, 5));
        assertEquals("bars 5–6", places(5, 6));
        assertEquals("bars 5 and 400", places(400, 5));
        assertEquals("bars 3–5, 9 and 12–14", places(3, 4, 5, 9, 12, 13, 14, 4));
        assertEquals("bars 2–14", places(2, 4, 6, 8, 14));
        assertEquals("bars 1–432", places(IntStream.rangeClosed(1, 432).toArray()));
    }

    /** Movements that begin anew at 1, and bars that have names instead of numbers. */
    @Test
    void numbersMayStartAgain() throws IOException {
        List<Finding> findings = new ArrayList<>(inBars(1, 1, 1));
        for (int index : new int[] {100, 102, 104, 106, 120, 122, 124}) {
            findings.add(beam("Viola", index, String.valueOf(index < 110 ? index + 1 : index - 109)));
        }
        assertTrue(told(false, file("a.mxl", findings)).contains("and 7 more like it, in bars 101–107 and 11–15\n"));
        // the last bar of one movement and the first of the next are neighbours, and no stretch
        List<Finding> edge = new ArrayList<>(inBars(1, 1, 1));
        edge.add(beam("Viola", 50, "51"));
        edge.add(beam("Viola", 51, "1"));
        assertTrue(told(false, file("a.mxl", edge)).contains("in bars 51 and 1\n"));
        List<Finding> named = new ArrayList<>(inBars(1, 1, 1));
        named.add(beam("Viola", 50, "51"));
        named.add(beam("Viola", 51, "X1"));
        assertTrue(told(false, file("a.mxl", named)).contains("in bars 51–X1\n"));
        List<Finding> many = new ArrayList<>(inBars(1, 1, 1));
        for (int movement = 0; movement < 4; movement++) {
            many.add(beam("Viola", movement * 100, "7"));
            many.add(beam("Viola", movement * 100 + 2, "9"));
            many.add(beam("Viola", movement * 100 + 4, "5"));
        }
        assertTrue(told(false, file("a.mxl", many)).contains("and 12 more like it, in 12 bars\n"));
    }

    @Test
    void theSummarySaysHowManyFilesAndKinds() throws IOException {
        String only = " It is about the file, not the notation.";
        CheckedFile clean = file("clean.mxl", List.of());
        CheckedFile unread = new CheckedFile("bad.mxl", List.of(), "not well-formed");
        CheckedFile one = file("one.mxl", inBars(1));
        CheckedFile two = file("two.mxl", List.of(finding("tie-loose", Severity.WARNING, "Viola", 0, "1"),
                finding("tie-loose", Severity.HINT, "Viola", 1, "2")));
        assertEquals("0 errors, 0 warnings, 0 hints in 1 file.", summary(false, clean));
        assertEquals("0 errors, 0 warnings, 0 hints in 2 files.", summary(true, clean, clean));
        assertEquals("1 error, 0 warnings, 0 hints: 1 kind in 1 file." + only, summary(false, one));
        assertEquals("1 error, 1 warning, 1 hint: 2 kinds in 2 of 3 files. 1 of them is about the file, not the notation.", summary(false, one, clean, two));
        assertEquals("1 error, 0 warnings, 0 hints: 1 kind in 1 of 2 files." + only + " 1 file could not be read.",
                summary(false, unread, one, clean));
        assertEquals("4 errors, 0 warnings, 0 hints: 1 kind in 1 file. All are about the file, not the notation. 2 files could"
                + " not be read. With --all every one is told.", summary(false, unread, file("many.mxl", inBars(1, 2, 3, 4)), unread));
        CheckedFile[] thousand = new CheckedFile[1001];
        java.util.Arrays.fill(thousand, clean);
        thousand[500] = one;
        assertEquals("1 error, 0 warnings, 0 hints: 1 kind in 1 of 1,001 files." + only, summary(false, thousand));
    }

    /** A bar's number comes from the file and may hold what steers a terminal. */
    @Test
    void namesOfBarsAreMadeSafe() throws IOException {
        List<Finding> findings = new ArrayList<>(inBars(1, 1, 1));
        findings.add(beam("Viola", 50, "\u001b[2J"));
        assertTrue(told(false, file("a.mxl", findings)).chars().allMatch(c -> c == '\n' || c >= ' '));
    }
}
