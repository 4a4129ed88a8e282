package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.font.Measures;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Box;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.musicxml.ScoreFile;
import countstave.plain.Phrases;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Signs of a drummer's, bassist's, guitarist's or singer's part beside the plain articulations (common practice, no source). */
class PlayingSignsTest {

    private static final Measures MEASURES = Measures.standard();

    private static CountedScore counted(String... bars) {
        return CountedScore.of(ScoreFile.of("signs.musicxml", Snippets.score("4/4", 2, bars).getBytes(StandardCharsets.UTF_8)),
                CountingOptions.defaults());
    }

    private static Chart chart(String... bars) {
        CountedScore counted = counted(bars);
        return ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard());
    }

    private static List<Shape> all(Chart chart, Role role) {
        return chart.pages().stream().flatMap(p -> p.shapes().stream()).filter(s -> s.role() == role).toList();
    }

    private static String note(String pitch, int length, String type, String notations) {
        return "<note><pitch><step>" + pitch.charAt(0) + "</step><octave>" + pitch.charAt(1) + "</octave></pitch><duration>" + length
                + "</duration><type>" + type + "</type>" + (notations.isEmpty() ? "" : "<notations>" + notations + "</notations>") + "</note>";
    }

    private static String technical(String sign) {
        return "<technical>" + sign + "</technical>";
    }

    private static String ornaments(String signs) {
        return "<ornaments>" + signs + "</ornaments>";
    }

    private static String halves(String first, String notationsOfFirst, String second, String notationsOfSecond) {
        return note(first, 4, "half", notationsOfFirst) + note(second, 4, "half", notationsOfSecond);
    }

    private static Box box(Shape shape) {
        return MEASURES.box(shape);
    }

    private static List<Box> heads(Chart chart) {
        return all(chart, Role.NOTE).stream().map(PlayingSignsTest::box).sorted(Comparator.comparingDouble(Box::left)).toList();
    }

    private static double staffTop(Chart chart) {
        return all(chart, Role.STAFF_LINE).stream().mapToDouble(s -> box(s).top()).max().orElseThrow();
    }

    private static double centre(Box box) {
        return (box.left() + box.right()) / 2;
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "<technical><harmonic/></technical>; stringsHarmonic",
        "<technical><snap-pizzicato/></technical>; pluckedSnapPizzicatoAbove",
        "<technical><string>3</string></technical>; guitarString3",
        "<ornaments><inverted-turn/></ornaments>; ornamentTurnInverted",
        "<ornaments><turn/></ornaments>; ornamentTurn"})
    void signsStandAboveTheNoteAndTheStaff(String notation, String sign) {
        for (String pitch : List.of("E4", "C5", "C6")) {
            Chart chart = chart(halves(pitch, notation, "D5", ""));
            Glyph drawn = chart.pages().get(0).shapes().stream().filter(s -> s instanceof Glyph g && g.name().equals(sign)).map(Glyph.class::cast)
                    .findFirst().orElseThrow();
            Box box = box(drawn);
            assertEquals(centre(heads(chart).get(0)), centre(box), 0.1);
            assertTrue(box.bottom() > staffTop(chart) && box.bottom() > heads(chart).get(0).top(), sign + " at " + box);
            assertEquals(List.of(), chart.notes());
        }
    }

    @Test
    void fingersOfAChordStandInItsOrder() {
        String lower = note("C4", 4, "half", technical("<fingering>1</fingering>"));
        String upper = note("E4", 4, "half", technical("<fingering>3</fingering>")).replace("<note>", "<note><chord/>");
        Chart chart = chart(lower + upper + note("D5", 4, "half", technical("<fingering>2-4</fingering>")));
        List<Text> numbers = all(chart, Role.TECHNICAL).stream().map(Text.class::cast).toList();
        assertEquals(List.of("1", "3", "2-4"), numbers.stream().map(Text::string).toList());
        assertTrue(numbers.get(1).y() > numbers.get(0).y() + 1, "3 above 1");
        assertEquals(centre(heads(chart).get(2)), numbers.get(2).x(), 0.1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"delayed-turn", "delayed-inverted-turn"})
    void aDelayedTurnStandsBetweenItsNoteAndTheNext(String turn) {
        Chart chart = chart(halves("C5", ornaments("<" + turn + "/>"), "D5", ""));
        Box sign = box(all(chart, Role.ARTICULATION).get(0));
        assertTrue(sign.left() > heads(chart).get(0).right() && sign.right() < heads(chart).get(1).left(), sign.toString());
    }

    @Test
    void anAccidentalMarkStandsOnItsOrnament() {
        Chart chart = chart(halves("C5", ornaments("<trill-mark/><accidental-mark>flat</accidental-mark>"), "D5", ""));
        List<Glyph> signs = all(chart, Role.ARTICULATION).stream().map(Glyph.class::cast).toList();
        assertEquals(List.of("ornamentTrill", "accidentalFlat"), signs.stream().map(Glyph::name).toList());
        assertTrue(box(signs.get(1)).bottom() >= box(signs.get(0)).top(), "above");
        assertTrue(signs.get(1).scale() < 1, "small");
        assertEquals(0, all(chart, Role.ACCIDENTAL).size());
    }

    private static final String WAVE = "<wavy-line type=\"%s\" number=\"1\"/>";

    /** From the sign to the last note of the trill, over the barline, over a line of music, or within one note. */
    @Test
    void theLineOfATrillGoesAsFarAsTheTrill() {
        Chart two = chart(halves("C5", ornaments("<trill-mark/>" + WAVE.formatted("start")), "D5", ornaments(WAVE.formatted("stop"))));
        Chart one = chart(halves("C5", ornaments("<trill-mark/>" + WAVE.formatted("start") + WAVE.formatted("stop")), "D5", ""));
        for (Chart chart : List.of(one, two)) {
            List<Shape> waves = all(chart, Role.TRILL_LINE);
            assertTrue(waves.size() >= 3, "waves: " + waves.size());
            Box sign = box(all(chart, Role.ARTICULATION).get(0));
            Box line = waves.stream().map(PlayingSignsTest::box).reduce(Box::with).orElseThrow();
            assertTrue(line.left() >= sign.right() - 0.2 && line.left() < sign.right() + 1.5, line + " behind " + sign);
            assertTrue(line.bottom() < sign.top() && line.top() > sign.bottom(), "at its height");
            Box second = heads(chart).get(1);
            assertTrue(chart == one ? line.right() < second.left() + 0.2 : line.right() > second.left() - 1, "as far as " + second);
        }
    }

    private static final String SLIDE = "<%1$s type=\"%2$s\" number=\"1\">%3$s</%1$s>";

    @ParameterizedTest
    @CsvSource({"slide, C5, A5", "slide, G5, E4", "glissando, C5, A5", "glissando, G5, E4", "slide, C5, C5"})
    void slidesLeadFromHeadToHead(String kind, String from, String to) {
        Chart chart = chart(halves(from, SLIDE.formatted(kind, "start", ""), to, SLIDE.formatted(kind, "stop", "")));
        List<Shape> line = all(chart, Role.GLISSANDO);
        assertTrue(line.stream().allMatch(kind.equals("slide") ? Line.class::isInstance : Curve.class::isInstance), "straight, or wavy");
        assertEquals(kind.equals("slide"), line.size() == 1);
        Box all = line.stream().map(PlayingSignsTest::box).reduce(Box::with).orElseThrow();
        Box first = heads(chart).get(0);
        Box second = heads(chart).get(1);
        assertTrue(all.left() >= first.right() && all.right() <= second.left(), all + " between " + first + " and " + second);
        assertTrue(all.width() >= 0.8, "long enough to be seen");
        assertTrue(all.overlaps(new Box(first.right(), first.bottom() - 0.2, first.right() + 1, first.top() + 0.2)), "at the first head");
        assertTrue(all.overlaps(new Box(second.left() - 1, second.bottom() - 0.2, second.left(), second.top() + 0.2)), "at the second");
        assertEquals(List.of(), chart.notes());
    }

    /** Its words stand along it, on its upper side (common practice, no source). */
    @ParameterizedTest
    @CsvSource({"slide, C4, A6", "glissando, A6, C4", "slide, C5, C5"})
    void wordsOfASlideStandAlongIt(String kind, String from, String to) {
        Chart chart = chart(halves(from, SLIDE.formatted(kind, "start", "gliss."), to, SLIDE.formatted(kind, "stop", "")));
        List<Shape> line = all(chart, Role.GLISSANDO).stream().filter(s -> !(s instanceof Text)).toList();
        Text words = (Text) all(chart, Role.GLISSANDO).stream().filter(Text.class::isInstance).findFirst().orElseThrow();
        double x1 = line.get(0) instanceof Line l ? l.x1() : ((Curve) line.get(0)).x1();
        double y1 = line.get(0) instanceof Line l ? l.y1() : ((Curve) line.get(0)).y1();
        Shape end = line.get(line.size() - 1);
        double x2 = end instanceof Line l ? l.x2() : ((Curve) end).x2();
        double y2 = end instanceof Line l ? l.y2() : ((Curve) end).y2();
        assertEquals((y2 - y1) / (x2 - x1), words.slope(), 1e-9);
        double angle = Math.atan2(y2 - y1, x2 - x1);
        // across the line: how far the baseline is from it; along: its two ends
        double across = (words.y() - y1) * Math.cos(angle) - (words.x() - x1) * Math.sin(angle);
        double along = (words.x() - x1) * Math.cos(angle) + (words.y() - y1) * Math.sin(angle);
        double half = MEASURES.text().width(words.string(), words.size(), words.style()) / 2;
        assertTrue(across > 0.4 && across < 1, "above it: " + across);
        assertTrue(along - half > 0 && along + half < Math.hypot(x2 - x1, y2 - y1), "no longer than it");
        // the box is around the turned letters
        double reach = half * Math.abs(Math.sin(angle));
        Box box = box(words);
        assertTrue(box.top() > words.y() + reach && box.bottom() < words.y() - reach && box.width() >= 2 * half * Math.cos(angle) - 1e-9, box.toString());
    }

    @Test
    void aSlideKeepsClearOfAccidentalsAndDots() {
        String sharp = note("D5", 4, "half", SLIDE.formatted("slide", "stop", "")).replace("<octave>5</octave>", "<alter>1</alter><octave>5</octave>")
                .replace("<type>half</type>", "<type>half</type><accidental>sharp</accidental>");
        Chart chart = chart(note("C5", 3, "quarter", SLIDE.formatted("slide", "start", "")).replace("<type>quarter</type>", "<type>quarter</type><dot/>")
                + sharp + note("C5", 1, "eighth", ""));
        Box line = box(all(chart, Role.GLISSANDO).get(0));
        for (Role role : List.of(Role.DOT, Role.ACCIDENTAL, Role.NOTE)) {
            all(chart, role).forEach(s -> assertFalse(box(s).overlaps(line), s + " meets the slide"));
        }
    }

    /** A slide over a break of the line is drawn on both. */
    @Test
    void aSlideGoesOnInTheNextLine() {
        String[] bars = new String[40];
        for (int i = 0; i < bars.length; i++) {
            bars[i] = halves("C5", SLIDE.formatted("slide", "stop", ""), "A5", SLIDE.formatted("slide", "start", ""));
        }
        bars[0] = halves("C5", "", "A5", SLIDE.formatted("slide", "start", ""));
        bars[39] = halves("C5", SLIDE.formatted("slide", "stop", ""), "A5", "");
        Chart chart = chart(bars);
        long lines = chart.pages().stream().flatMap(p -> p.bars().stream()).map(b -> b.box().top()).distinct().count();
        assertTrue(lines > 2, "lines of music: " + lines);
        assertEquals(39 + lines - 1, all(chart, Role.GLISSANDO).size());
    }

    @ParameterizedTest
    @CsvSource({"hammer-on, H", "pull-off, P"})
    void hammeredAndPulledNotesAreBoundWithALetter(String kind, String letter) {
        String sign = "<" + kind + " type=\"%s\" number=\"1\"/>";
        Chart chart = chart(halves("C5", technical(sign.formatted("start")), "D5", technical(sign.formatted("stop"))));
        Curve bow = (Curve) all(chart, Role.SLUR).get(0);
        Text text = (Text) all(chart, Role.TECHNICAL).get(0);
        assertEquals(letter, text.string());
        assertTrue(text.x() > bow.x1() && text.x() < bow.x2() && text.y() > Math.max(bow.y1(), bow.y2()), "above the bow");
        // a slur that the file has between the same notes is that bow
        String slur = "<slur type=\"%s\" number=\"1\"/>";
        Chart slurred = chart(halves("C5", slur.formatted("start") + technical(sign.formatted("start")), "D5",
                slur.formatted("stop") + technical(sign.formatted("stop"))));
        assertEquals(1, all(slurred, Role.SLUR).size());
        assertEquals(1, all(slurred, Role.TECHNICAL).size());
    }

    @ParameterizedTest
    @CsvSource({"1, ½", "2, full", "3, 1½", "0.5, ¼", "4, 2"})
    void aBendSaysHowFar(String halfSteps, String words) {
        Chart chart = chart(halves("C5", technical("<bend><bend-alter>" + halfSteps + "</bend-alter></bend>"), "D5", ""));
        List<Shape> signs = all(chart, Role.TECHNICAL);
        assertEquals(1, signs.stream().filter(Curve.class::isInstance).count());
        Box arrow = box(signs.stream().filter(Polygon.class::isInstance).findFirst().orElseThrow());
        Text text = signs.stream().filter(Text.class::isInstance).map(Text.class::cast).findFirst().orElseThrow();
        assertEquals(words, text.string());
        assertTrue(arrow.bottom() > staffTop(chart) && text.y() >= arrow.top(), "the words above the arrow above the staff");
        assertTrue(arrow.left() > heads(chart).get(0).right() && arrow.right() < heads(chart).get(1).left(), "between the notes");
    }

    /** Into the note from below or above, out of it up or down; MusicXML 4.0, articulations. */
    @ParameterizedTest
    @CsvSource({"scoop, -1, -1", "plop, -1, 1", "doit, 1, 1", "falloff, 1, -1"})
    void shortSlidesStandBesideTheirNote(String name, int side, int way) {
        String dot = "<dot/>";
        Chart chart = chart(note("C5", 2, "quarter", "") + note("A4", 3, "quarter", "<articulations><" + name + "/></articulations>")
                .replace("</type>", "</type>" + dot) + note("C5", 3, "quarter", "").replace("</type>", "</type>" + dot));
        Curve slide = (Curve) all(chart, Role.GLISSANDO).get(0);
        Box head = heads(chart).get(1);
        Box before = heads(chart).get(0);
        Box after = heads(chart).get(2);
        double middle = (head.bottom() + head.top()) / 2;
        assertEquals(middle, side < 0 ? slide.y2() : slide.y1(), 0.01, "at the note");
        assertEquals(way, Math.signum((side < 0 ? slide.y1() : slide.y2()) - middle));
        assertTrue(side < 0 ? slide.x1() > before.right() && slide.x2() < head.left()
                : slide.x1() > box(all(chart, Role.DOT).get(0)).right() && slide.x2() < after.left(), slide + " beside " + head);
        assertEquals(List.of(), chart.notes());
    }

    /** What no file says is said in the language of the chart. */
    @ParameterizedTest
    @CsvSource({"2, 1", "3.5, '1,75'", "1, ½"})
    void aBendSaysHowFarInGerman(String halfSteps, String words) {
        ChartOptions standard = ChartOptions.standard();
        ChartOptions german = new ChartOptions(standard.paper(), false, standard.marginMm(), standard.staffMm(), false, standard.unplayed(),
                Phrases.in("de"), standard.contents());
        CountedScore counted = counted(halves("C5", technical("<bend><bend-alter>" + halfSteps + "</bend-alter></bend>"), "D5", ""));
        Chart chart = ChartWriter.layout(counted.parts(), counted.score(), german);
        assertEquals(List.of(words), all(chart, Role.TECHNICAL).stream().filter(Text.class::isInstance).map(s -> ((Text) s).string()).toList());
    }

    /**
     * Arrows from left to right: up is a bend or, with an upright line, one that is made before; down is where it is let back. MusicXML
     * 4.0, bend: releases and pre-bends have half steps below zero; above zero some files mean a bend and its release.
     */
    @ParameterizedTest
    @CsvSource(textBlock = """
            2:, -2:release, up down, full
            2:release, , up down, full
            -2:release, , down, ''
            -1:pre-bend, , up, ½
            1:pre-bend, , up, ½
            -2:pre-bend, -2:release, up down, full
            3:, -3:release, up down, 1½""")
    void aBendIsLetBackOrMadeBefore(String first, String second, String arrows, String words) {
        Chart chart = chart(halves("C5", technical(bend(first) + bend(second)), "D5", ""));
        List<Shape> signs = all(chart, Role.TECHNICAL);
        List<Polygon> heads = signs.stream().filter(Polygon.class::isInstance).map(Polygon.class::cast)
                .sorted(Comparator.comparingDouble(p -> box(p).left())).toList();
        // the tip is the arrow's last point
        List<String> ways = heads.stream().map(p -> p.points().get(2).y() > p.points().get(0).y() ? "up" : "down").toList();
        assertEquals(arrows, String.join(" ", ways));
        assertEquals(words, String.join(" ", signs.stream().filter(Text.class::isInstance).map(t -> ((Text) t).string()).toList()));
        assertEquals(first.contains("pre-bend"), signs.stream().anyMatch(Line.class::isInstance), "an upright line");
        Box note = heads(chart).get(0);
        Box next = heads(chart).get(1);
        for (Shape sign : signs) {
            assertTrue((sign instanceof Text || box(sign).left() > note.right() - 0.3) && box(sign).right() < next.left(), sign + " between the notes");
        }
        double top = heads.stream().filter(p -> ways.get(heads.indexOf(p)).equals("up")).mapToDouble(p -> p.points().get(2).y()).max().orElse(Double.MAX_VALUE);
        assertTrue(top > staffTop(chart), "up above the staff");
        heads.stream().filter(p -> ways.get(heads.indexOf(p)).equals("down"))
                .forEach(p -> assertEquals((note.bottom() + note.top()) / 2, p.points().get(2).y(), 0.2, "down to the head"));
        assertEquals(List.of(), chart.notes());
    }

    private static String bend(String bend) {
        if (bend == null) {
            return "";
        }
        String[] parts = bend.split(":");
        return "<bend><bend-alter>" + parts[0] + "</bend-alter>" + (parts.length < 2 ? "" : "<" + parts[1] + "/>") + "</bend>";
    }

    /** What is let back by less than it was bent comes down by as much less. */
    @Test
    void aBendMayBeLetBackByLess() {
        Chart chart = chart(halves("C5", technical(bend("2:") + bend("-1:release")), "D5", ""));
        List<Polygon> arrows = all(chart, Role.TECHNICAL).stream().filter(Polygon.class::isInstance).map(Polygon.class::cast).toList();
        Box note = heads(chart).get(0);
        double low = (note.bottom() + note.top()) / 2;
        assertEquals((low + arrows.get(0).points().get(2).y()) / 2, arrows.get(1).points().get(2).y(), 0.05);
    }

    private static String direction(String placement, String... types) {
        return "<direction placement=\"" + placement + "\"><direction-type>" + String.join("</direction-type><direction-type>", types)
                + "</direction-type></direction>";
    }

    @ParameterizedTest
    @ValueSource(strings = {"above", "below"})
    void dashesGoOnBehindTheirWords(String placement) {
        String start = "<dashes type=\"start\" number=\"1\"/>";
        String stop = direction(placement, "<dashes type=\"stop\" number=\"1\"/>");
        Chart chart = chart(direction(placement, "<words>cresc.</words>", start) + halves("C5", "", "D5", ""), halves("C6", "", "D4", ""),
                note("C5", 4, "half", "") + stop + note("D5", 4, "half", ""));
        List<Line> dashes = all(chart, Role.DASHES).stream().map(Line.class::cast).toList();
        assertTrue(dashes.size() > 5, "dashes: " + dashes.size());
        Text words = (Text) all(chart, Role.WORDS).get(0);
        double last = heads(chart).get(5).left();
        for (Line dash : dashes) {
            assertTrue(dash.y1() > words.y() && dash.y1() < words.y() + 1 && dash.y1() == dash.y2(), "on the level of the words");
            assertTrue(dash.x1() > box(words).right() && dash.x2() < last, "between the words and where they end");
            for (Shape other : chart.pages().get(0).shapes()) {
                assertFalse(other.role() != Role.DASHES && box(other).overlaps(box(dash)), other + " meets " + dash);
            }
        }
        assertTrue(last - dashes.get(dashes.size() - 1).x2() < 4, "as far as they hold");
        assertEquals(List.of(), chart.notes());
    }

    /** What one cannot draw is still named. */
    @Test
    void otherEndsAreMissed() {
        Chart chart = chart(halves("C5", SLIDE.formatted("slide", "start", "") + technical("<golpe/>"), "D5", ""));
        assertTrue(chart.notes().toString().contains("slide without an end") && chart.notes().toString().contains("golpe"),
                chart.notes().toString());
    }
}
