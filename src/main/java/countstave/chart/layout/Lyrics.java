package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.score.Event;
import countstave.score.Lyric;
import countstave.score.Voice;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The file's own lyrics, between the staff and the counts, one row a verse. */
final class Lyrics {

    private final Measures measures;

    Lyrics(Measures measures) {
        this.measures = measures;
    }

    private record Sung(double x, Event event, Lyric lyric) {
    }

    void add(List<PlacedBar> placed, Skyline skyline, List<Shape> shapes) {
        Map<String, List<Sung>> verses = new TreeMap<>();
        for (PlacedBar bar : placed) {
            if (bar.bar().isRun()) {
                continue;
            }
            for (Voice voice : bar.bar().bar().voices()) {
                for (Event event : voice.events()) {
                    for (Lyric lyric : event.isGrace() || !bar.bar().staffNumbers().contains(event.staff())
                            ? List.<Lyric>of() : event.look().lyrics()) {
                        verses.computeIfAbsent(lyric.number(), n -> new ArrayList<>())
                                .add(new Sung(bar.x(event.start()), event, lyric));
                    }
                }
            }
        }
        for (List<Sung> verse : verses.values()) {
            verse.sort(Comparator.comparingDouble(Sung::x));
            double y = skyline.bottom() - Sizes.STACK_GAP - measures.text().capHeight(Sizes.LYRIC, Text.Style.REGULAR);
            row(verse, y, shapes, skyline);
        }
    }

    private void row(List<Sung> verse, double y, List<Shape> shapes, Skyline skyline) {
        for (int i = 0; i < verse.size(); i++) {
            Sung sung = verse.get(i);
            Text text = text(sung.lyric().text(), sung.x(), y, sung.event());
            shapes.add(text);
            skyline.add(measures.box(text));
            boolean goesOn = sung.lyric().syllabic() == Lyric.Syllabic.BEGIN
                    || sung.lyric().syllabic() == Lyric.Syllabic.MIDDLE;
            if (goesOn && i + 1 < verse.size()) {
                double right = measures.box(text).right();
                double left = measures.box(text(verse.get(i + 1).lyric().text(), verse.get(i + 1).x(), y,
                        sung.event())).left();
                shapes.add(text("-", (left + right) / 2, y, sung.event()));
            }
        }
    }

    private static Text text(String words, double x, double y, Event event) {
        return new Text(words, x, y, Sizes.LYRIC, Text.Style.REGULAR, Text.Anchor.MIDDLE, Role.LYRIC, event.start());
    }
}
