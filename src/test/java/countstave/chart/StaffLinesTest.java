package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.font.Measures;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.musicxml.ScoreFile;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Staves of other than five lines, and tablature (common practice, no source). */
class StaffLinesTest {

    private static final Measures MEASURES = Measures.standard();

    private static Chart chart(String... bars) {
        CountedScore counted = CountedScore.of(ScoreFile.of("lines.musicxml", Snippets.score("4/4", 2, bars)
                .getBytes(StandardCharsets.UTF_8)), CountingOptions.defaults());
        return ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard());
    }

    private static List<Shape> all(Chart chart, Role role) {
        return chart.pages().get(0).shapes().stream().filter(s -> s.role() == role).toList();
    }

    private static double middle(List<Shape> shapes) {
        return shapes.stream().map(MEASURES::box).reduce(Box::with).map(b -> (b.bottom() + b.top()) / 2).orElseThrow();
    }

    private static String staff(String clef, int lines) {
        return "<attributes><clef><sign>" + clef + "</sign></clef><staff-details><staff-lines>" + lines + "</staff-lines></staff-details>"
                + "</attributes>";
    }

    private static String drum(String place, int length, String type) {
        return "<note><unpitched><display-step>" + place.charAt(0) + "</display-step><display-octave>" + place.charAt(1)
                + "</display-octave></unpitched><duration>" + length + "</duration><type>" + type + "</type></note>";
    }

    private static String rest(int length, String type) {
        return "<note><rest/><duration>" + length + "</duration><type>" + type + "</type></note>";
    }

    private static TreeSet<Double> lines(Chart chart) {
        TreeSet<Double> lines = new TreeSet<>();
        all(chart, Role.STAFF_LINE).forEach(l -> lines.add(Math.round(((Line) l).y1() * 1e6) / 1e6));
        return lines;
    }

    /** @param lowest display position of the lowest line, as files write it: from E4 upwards, or around B4 */
    @ParameterizedTest
    @CsvSource({"1, B4", "1, E4", "2, E4", "2, A4", "3, E4", "3, G4", "4, F4", "6, E4"})
    void allStandsInTheMiddleOfTheLinesThatAreThere(int number, String lowest) {
        String steps = "CDEFGAB";
        int bottom = steps.indexOf(lowest.charAt(0)) + 7 * (lowest.charAt(1) - '0');
        StringBuilder notes = new StringBuilder(staff("percussion", number));
        for (int i = 0; i < 4; i++) {
            int place = bottom + 2 * (i * (number - 1) / 3);
            notes.append(drum("" + steps.charAt(place % 7) + place / 7, 2, "quarter"));
        }
        int top = bottom + 2 * (number - 1);
        String highest = "" + steps.charAt(top % 7) + top / 7;
        Chart chart = chart(notes.toString(), "<note><rest measure=\"yes\"/><duration>8</duration></note>",
                rest(4, "half") + rest(2, "quarter") + drum(highest, 2, "quarter"));
        TreeSet<Double> lines = lines(chart);
        assertEquals(number, lines.size());
        double middle = (lines.first() + lines.last()) / 2;
        assertEquals(number - 1, lines.last() - lines.first(), 1e-6, "a space apart");
        assertEquals(middle, middle(all(chart, Role.CLEF)), 0.05, "clef");
        assertEquals(middle, middle(all(chart, Role.METER)), 0.1, "meter");
        for (Shape barline : all(chart, Role.BARLINE)) {
            Box box = MEASURES.box(barline);
            assertEquals(number == 1 ? lines.first() - 1 : lines.first(), box.bottom(), 0.01, "barline");
            assertEquals(number == 1 ? lines.last() + 1 : lines.last(), box.top(), 0.01, "barline");
        }
        for (Shape rest : all(chart, Role.REST)) {
            Glyph sign = (Glyph) rest;
            if (sign.name().equals("restQuarter")) {
                assertEquals(middle, sign.y(), 0.01);
            } else {
                assertTrue(lines.contains(Math.round(sign.y() * 1e6) / 1e6), sign + " hangs from a line, or sits on one, of " + lines);
                assertTrue(Math.abs(sign.y() - middle) <= 1.001, sign + " in the middle of " + lines);
            }
        }
        List<Glyph> heads = all(chart, Role.NOTE).stream().map(Glyph.class::cast).toList();
        assertEquals(lines.first(), heads.get(0).y(), 0.01, "the lowest note on the lowest line");
        assertEquals(lines.last(), heads.get(3).y(), 0.01, "the highest on the highest");
    }

    private static String fret(int string, int fret, int length, String type, String more) {
        return "<note>" + (more.contains("chord") ? "<chord/>" : "") + "<pitch><step>E</step><octave>3</octave></pitch><duration>" + length
                + "</duration><type>" + type + "</type>" + (more.contains("beam") ? "<beam number=\"1\">" + more.substring(5) + "</beam>" : "")
                + "<notations><technical><string>" + string + "</string><fret>" + fret + "</fret></technical></notations></note>";
    }

    private static final String BAR = fret(1, 0, 2, "quarter", "") + fret(6, 12, 1, "eighth", "beam begin") + fret(3, 7, 1, "eighth", "beam end")
            + fret(5, 3, 2, "quarter", "") + fret(4, 2, 2, "quarter", "chord") + fret(2, 10, 2, "quarter", "");

    @ParameterizedTest
    @CsvSource({"6", "7"})
    void numbersStandOnTheLinesOfTheirStrings(int strings) {
        Chart chart = chart(staff("TAB", strings) + BAR);
        List<Double> lines = List.copyOf(lines(chart).descendingSet());
        List<Text> numbers = all(chart, Role.NOTE).stream().map(Text.class::cast).toList();
        assertEquals(List.of("0", "12", "7", "3", "2", "10"), numbers.stream().map(Text::string).toList());
        int[] on = {1, 6, 3, 5, 4, 2};
        for (int i = 0; i < on.length; i++) {
            Text number = numbers.get(i);
            double height = MEASURES.text().capHeight(number.size(), number.style());
            assertEquals(lines.get(on[i] - 1), number.y() + height / 2, 0.01, number.toString());
            Box box = new Box(MEASURES.box(number).left(), number.y(), MEASURES.box(number).right(), number.y() + height);
            for (Shape line : all(chart, Role.STAFF_LINE)) {
                assertFalse(MEASURES.box(line).overlaps(box), line + " runs through " + number);
            }
            for (Shape stem : all(chart, Role.STEM)) {
                assertFalse(MEASURES.box(stem).overlaps(box), stem + " runs through " + number);
            }
        }
        assertEquals(5, all(chart, Role.STEM).size());
        assertEquals(1, all(chart, Role.BEAM).size());
        assertEquals(0, all(chart, Role.LEDGER).size());
        assertEquals(List.of(), chart.notes());
    }

    /** As in a file of the MusicXML test suite: a string that a chord holds down in two places; a number said twice. */
    @Test
    void numbersOfOneStringStandBesideEachOther() {
        Chart chart = chart(staff("TAB", 6) + fret(5, 5, 2, "quarter", "") + fret(6, 0, 2, "quarter", "chord") + fret(6, 12, 2, "quarter", "chord")
                + fret(5, 0, 2, "quarter", "chord") + fret(5, 0, 2, "quarter", "chord") + fret(1, 3, 2, "quarter", "").repeat(3));
        List<Text> numbers = all(chart, Role.NOTE).stream().map(Text.class::cast).limit(4).toList();
        assertEquals(List.of("0", "12", "0", "5"), numbers.stream().sorted(Comparator.comparingDouble(Text::y).thenComparingDouble(Text::x))
                .map(Text::string).toList());
        for (Text one : numbers) {
            for (Text other : numbers) {
                assertTrue(one == other || one.y() != other.y() || !MEASURES.box(one).overlaps(MEASURES.box(other)), one + " on " + other);
            }
        }
    }

    @Test
    void ghostAndDeadNotesOfATab() {
        String ghost = fret(1, 3, 2, "quarter", "").replace("<notations>", "<notehead parentheses=\"yes\">normal</notehead><notations>");
        String dead = fret(2, 0, 2, "quarter", "").replace("<notations>", "<notehead>x</notehead><notations>");
        Chart chart = chart(staff("TAB", 6) + (ghost + dead).repeat(2));
        assertEquals(List.of("(3)", "X", "(3)", "X"), all(chart, Role.NOTE).stream().map(s -> ((Text) s).string()).toList());
    }

    /** What a part counts is found in its numbers too: they stand above their counts. */
    @Test
    void countsStandBelowTheNumbers() {
        Chart chart = chart(staff("TAB", 6) + BAR);
        for (Shape count : all(chart, Role.SYLLABLE_PLAYED)) {
            assertTrue(all(chart, Role.NOTE).stream().anyMatch(n -> n.at().equals(count.at()) && Math.abs(((Text) n).x() - ((Text) count).x()) < 0.02),
                    count.toString());
        }
    }

    private static String twoStaves(String second) {
        String first = fret(1, 3, 2, "quarter", "").replaceAll("<notations>.*</notations>", "<staff>1</staff>");
        return "<attributes><staves>2</staves><clef number=\"1\"><sign>G</sign></clef><clef number=\"2\"><sign>TAB</sign></clef>"
                + "<staff-details number=\"2\"><staff-lines>6</staff-lines></staff-details></attributes>" + first.repeat(4)
                + "<backup><duration>8</duration></backup>" + second.replace("<notations>", "<staff>2</staff><notations>")
                .replace("<duration>", "<duration>").replace("</duration>", "</duration><voice>5</voice>");
    }

    @Test
    void aTabThatDoublesIsLeftOut() {
        Chart doubled = chart(twoStaves(fret(1, 3, 2, "quarter", "").repeat(4)));
        assertEquals(5, lines(doubled).size());
        assertTrue(all(doubled, Role.NOTE).stream().allMatch(Glyph.class::isInstance));
        Chart other = chart(twoStaves(fret(1, 3, 4, "half", "").repeat(2)));
        assertEquals(11, lines(other).size());
        assertEquals(2, all(other, Role.NOTE).stream().filter(Text.class::isInstance).count());
    }

    @Test
    void aTabWithoutNumbersIsNamed() {
        Chart chart = chart(staff("TAB", 6) + BAR.replaceAll("<notations>.*?</notations>", ""));
        assertTrue(chart.notes().toString().contains("tablature without strings and frets"), chart.notes().toString());
    }
}
