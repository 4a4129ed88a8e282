package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.score.Event;
import countstave.score.Lyric;
import countstave.score.Voice;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * The file's own lyrics, between the staff and the counts, one row a verse: hyphens between the syllables of a word, and a
 * line as far as a syllable that ends its word is sung on. For the lines of one part, in order.
 */
final class Lyrics {

    /** Over a longer gap a hyphen is repeated. */
    private static final double HYPHEN_EVERY = 14;
    private static final double SHORTEST_EXTENDER = 1;
    private static final char ELISION = '\u203F';
    private static final String ELISION_SIGN = "lyricsElisionNarrow";

    private final Measures measures;
    /** Verse and voice of the syllables that are still sung when a line ends. */
    private final Set<String> sungOn = new HashSet<>();

    private Set<String> sungOnBefore = Set.of();

    Lyrics(Measures measures) {
        this.measures = measures;
    }

    /** The line that was added last will be added anew. */
    void forgetLast() {
        sungOn.clear();
        sungOn.addAll(sungOnBefore);
    }

    private record Sung(double x, Event event, Lyric lyric) {
    }

    /** What one verse has on a line: its syllables, and to where the ends of words are sung on. */
    private static final class Row {

        final List<Sung> syllables = new ArrayList<>();
        /** From a syllable, or from the start of the line where the key is null, to this x. */
        // in order: the hash of what is sung differs from process to process
        final Map<Sung, Double> extenders = new LinkedHashMap<>();
    }

    void add(List<PlacedBar> placed, Skyline skyline, List<Shape> shapes) {
        sungOnBefore = Set.copyOf(sungOn);
        Map<String, Row> verses = new TreeMap<>();
        Map<String, Sung> open = new HashMap<>();
        for (PlacedBar bar : placed) {
            if (bar.bar().isRun()) {
                continue;
            }
            for (Voice voice : bar.bar().bar().voices()) {
                for (Event event : voice.events()) {
                    if (!event.isGrace() && bar.bar().staffNumbers().contains(event.staff())) {
                        read(event, voice.name(), bar, verses, open);
                    }
                }
            }
        }
        double start = placed.get(0).left() + placed.get(0).bar().prefix(true);
        for (Row row : verses.values()) {
            row.syllables.sort(Comparator.comparingDouble(Sung::x));
            double y = skyline.bottom() - Sizes.STACK_GAP - measures.text().capHeight(Sizes.LYRIC, Text.Style.REGULAR);
            draw(row, y, start, shapes, skyline);
        }
    }

    private void read(Event event, String voice, PlacedBar bar, Map<String, Row> verses, Map<String, Sung> open) {
        Set<String> here = new HashSet<>();
        double x = bar.x(event.start());
        for (Lyric lyric : of(event)) {
            String key = voice + "/" + lyric.number();
            if (lyric.text().isBlank()) {
                if (sungOn.contains(key)) {
                    // here the line goes on, or it stops: MusicXML 4.0, extend types continue and stop
                    verses.computeIfAbsent(row(event, key), n -> new Row()).extenders.put(open.get(key), x + 0.6);
                    here.add(key);
                    if (!lyric.extend()) {
                        sungOn.remove(key);
                        open.remove(key);
                    }
                }
                continue;
            }
            double shift = !event.start().equals(Offset.ZERO) ? 0
                    : shift(measures.text().width(words(lyric), Sizes.LYRIC, Text.Style.REGULAR) / 2, x - bar.left());
            Sung sung = new Sung(x + shift, event, lyric);
            verses.computeIfAbsent(row(event, key), n -> new Row()).syllables.add(sung);
            here.add(key);
            sungOn.remove(key);
            open.remove(key);
            if (lyric.extend()) {
                sungOn.add(key);
                open.put(key, sung);
            }
        }
        for (String key : List.copyOf(sungOn)) {
            if (here.contains(key) || !key.substring(0, key.lastIndexOf('/')).equals(voice)) {
                continue;
            }
            if (event.isRest()) {
                sungOn.remove(key);
                open.remove(key);
            } else {
                verses.computeIfAbsent(row(event, key), n -> new Row()).extenders.put(open.get(key), x + 0.6);
            }
        }
    }

    /**
     * The lyrics of a note, each in a row of its own: of several with one number (a file may tell them apart by their names
     * alone, and so may the notes of a chord), the second and further ones get a number of their own.
     */
    static List<Lyric> of(Event event) {
        List<Lyric> lyrics = event.look().lyrics();
        if (lyrics.size() < 2) {
            return lyrics;
        }
        Map<String, Integer> had = new HashMap<>();
        List<Lyric> apart = new ArrayList<>();
        for (Lyric lyric : lyrics) {
            int before = lyric.text().isBlank() ? 0 : had.merge(lyric.number(), 1, Integer::sum) - 1;
            apart.add(before == 0 ? lyric
                    : new Lyric(lyric.number() + "." + before, lyric.text(), lyric.syllabic(), lyric.extend()));
        }
        return apart;
    }

    /**
     * A long syllable at a bar's first note begins with the bar, and pushes no note.
     *
     * @param half half its width
     * @param room from the left of the bar to the middle of the note
     * @return how far its middle stands right of that of the note
     */
    static double shift(double half, double room) {
        return Math.max(0, half - (room - Sizes.LYRIC_GAP / 2));
    }

    /** Verses of one voice stand under each other, those of another voice or staff below them. */
    private static String row(Event event, String key) {
        return String.format(Locale.ROOT, "%03d/%s", event.staff(), key);
    }

    private void draw(Row row, double y, double start, List<Shape> shapes, Skyline skyline) {
        List<Shape> added = new ArrayList<>();
        for (int i = 0; i < row.syllables.size(); i++) {
            Sung sung = row.syllables.get(i);
            syllable(sung, y, added);
            boolean goesOn = sung.lyric().syllabic() == Lyric.Syllabic.BEGIN
                    || sung.lyric().syllabic() == Lyric.Syllabic.MIDDLE;
            if (goesOn) {
                hyphens(sung, i + 1 < row.syllables.size() ? row.syllables.get(i + 1) : null, y, added);
            }
        }
        double thickness = measures.music().engraving("lyricLineThickness");
        for (Map.Entry<Sung, Double> extender : row.extenders.entrySet()) {
            Sung sung = extender.getKey();
            double from = sung == null ? start : right(sung) + 0.25;
            double to = Math.min(extender.getValue(), next(row, from));
            if (to - from >= SHORTEST_EXTENDER) {
                added.add(new Line(from, y, to, y, thickness, Role.LYRIC, sung == null ? null : sung.event().start()));
            }
        }
        skyline.put(added, shapes, measures);
    }

    private void hyphens(Sung sung, Sung next, double y, List<Shape> shapes) {
        double right = right(sung);
        if (next == null) {
            shapes.add(text("-", right + 0.8, y, sung.event()));
            return;
        }
        double gap = left(next) - right;
        int count = Math.max(1, (int) (gap / HYPHEN_EVERY));
        for (int i = 0; i < count; i++) {
            shapes.add(text("-", right + gap * (2 * i + 1) / (2 * count), y, sung.event()));
        }
    }

    /** Where the next syllable leaves room to, behind x. */
    private double next(Row row, double x) {
        return row.syllables.stream().mapToDouble(this::left).filter(l -> l > x).min().orElse(Double.MAX_VALUE) - 0.3;
    }

    private double right(Sung sung) {
        return sung.x() + measures.text().width(words(sung.lyric()), Sizes.LYRIC, Text.Style.REGULAR) / 2;
    }

    private double left(Sung sung) {
        return sung.x() - measures.text().width(words(sung.lyric()), Sizes.LYRIC, Text.Style.REGULAR) / 2;
    }

    /** The text of a syllable; two words on one note have a blank between them. */
    static String words(Lyric lyric) {
        return lyric.text().replace(ELISION, '\u00A0');
    }

    /** Words on one note are joined by a bow below the blank between them. */
    private void syllable(Sung sung, double y, List<Shape> shapes) {
        String words = words(sung.lyric());
        shapes.add(text(words, sung.x(), y, sung.event()));
        for (int i = sung.lyric().text().indexOf(ELISION); i >= 0; i = sung.lyric().text().indexOf(ELISION, i + 1)) {
            double middle = left(sung) + measures.text().width(words.substring(0, i), Sizes.LYRIC, Text.Style.REGULAR)
                    + measures.text().width("\u00A0", Sizes.LYRIC, Text.Style.REGULAR) / 2;
            Box bow = measures.music().box(ELISION_SIGN);
            shapes.add(new Glyph(ELISION_SIGN, middle - (bow.left() + bow.right()) / 2, y, Role.LYRIC, sung.event().start()));
        }
    }

    private static Text text(String words, double x, double y, Event event) {
        return new Text(words, x, y, Sizes.LYRIC, Text.Style.REGULAR, Text.Anchor.MIDDLE, Role.LYRIC, event.start());
    }
}
