package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.musicxml.ScoreFile;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Chord names on the page: one row above the notation, each over its note (common practice, no source). */
class ChordNamesTest {

    private static final Measures MEASURES = Measures.standard();

    private static List<Shape> page(String xml) {
        CountedScore counted = CountedScore.of(ScoreFile.of("a.musicxml", xml.getBytes(StandardCharsets.UTF_8)),
                CountingOptions.defaults());
        return ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard()).pages().get(0).shapes();
    }

    private static String chord(String root, String kind, String degrees) {
        return "<harmony><root><root-step>" + root + "</root-step></root><kind>" + kind + "</kind>" + degrees + "</harmony>";
    }

    private static String note(int octave) {
        return "<note><pitch><step>A</step><octave>" + octave + "</octave></pitch><duration>1</duration><voice>1</voice>"
                + "<type>quarter</type></note>";
    }

    private static List<Box> boxes(List<Shape> page, Role role) {
        return page.stream().filter(s -> s.role() == role).map(MEASURES::box).toList();
    }

    /** The signs of one name lie closer together than two names do. */
    private static List<Box> names(List<Shape> page) {
        List<Box> names = new ArrayList<>();
        List<Box> signs = boxes(page, Role.CHORD_NAME).stream().sorted(Comparator.comparingDouble(Box::left)).toList();
        for (Box sign : signs) {
            Box last = names.isEmpty() ? null : names.get(names.size() - 1);
            if (last != null && sign.left() - last.right() < 0.4) {
                names.set(names.size() - 1, last.with(sign));
            } else {
                names.add(sign);
            }
        }
        return names;
    }

    @Test
    void longNamesOfShortNotesStayApartAlsoOverTheBarline() {
        String alterations = "<degree><degree-value>9</degree-value><degree-alter>-1</degree-alter><degree-type>add"
                + "</degree-type></degree><degree><degree-value>11</degree-value><degree-alter>1</degree-alter><degree-type>add"
                + "</degree-type></degree>";
        StringBuilder bar = new StringBuilder();
        for (int i = 0; i < 4; i++) {
            bar.append(chord("C", "dominant", alterations)).append(note(4));
        }
        List<Shape> page = page(Snippets.score("4/4", 1, bar.toString(), bar.toString()));
        // bars that fit no line together stand under each other
        Map<Long, List<Shape>> rows = page.stream().filter(s -> s.role() == Role.CHORD_NAME && s instanceof Text)
                .collect(Collectors.groupingBy(s -> Math.round(((Text) s).y() * 100), TreeMap::new, Collectors.toList()));
        int found = 0;
        for (List<Shape> row : rows.values()) {
            double y = ((Text) row.get(0)).y();
            List<Shape> near = page.stream().filter(s -> s.role() == Role.CHORD_NAME)
                    .filter(s -> Math.abs(MEASURES.box(s).bottom() - y) < 2).toList();
            found += names(near).size();
        }
        assertEquals(8, found);
    }

    @Test
    void oneRowAboveTheHighestNote() {
        List<Shape> page = page(Snippets.score("4/4", 1, chord("A", "minor", "") + note(4) + chord("D", "major", "") + note(6)
                + chord("G", "major", "") + note(4) + note(4)));
        List<Text> texts = page.stream().filter(s -> s.role() == Role.CHORD_NAME).map(Text.class::cast).toList();
        assertEquals(List.of("Am", "D", "G"), texts.stream().map(Text::string).toList());
        assertEquals(1, texts.stream().map(Text::y).distinct().count());
        double highest = boxes(page, Role.NOTE).stream().mapToDouble(Box::top).max().orElseThrow();
        assertTrue(texts.get(0).y() > highest);
        List<Box> heads = boxes(page, Role.NOTE).stream().sorted(Comparator.comparingDouble(Box::left)).toList();
        for (int i = 0; i < 3; i++) {
            assertEquals(heads.get(i).left(), texts.get(i).x(), 0.3, texts.get(i).string());
        }
    }

    /** A bar of rest in which the chord changes is not drawn into a run of bars of rest. */
    @Test
    void restsWithChords() {
        String rest = "<note><rest measure=\"yes\"/><duration>4</duration><voice>1</voice></note>";
        String style = "<attributes><measure-style><multiple-rest>3</multiple-rest></measure-style></attributes>";
        List<Shape> page = page(Snippets.score("4/4", 1, style + chord("C", "major", "") + rest, rest,
                chord("F", "major", "") + rest, note(4) + note(4) + note(4) + note(4)));
        List<String> names = page.stream().filter(s -> s.role() == Role.CHORD_NAME).map(s -> ((Text) s).string()).toList();
        assertEquals(List.of("C", "F"), names);
    }
}
