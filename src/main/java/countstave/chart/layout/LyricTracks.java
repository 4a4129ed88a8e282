package countstave.chart.layout;

import countstave.chart.engrave.Column;
import countstave.chart.font.Measures;
import countstave.chart.shape.Text;
import countstave.score.Bar;
import countstave.score.Event;
import countstave.score.Lyric;
import countstave.score.Voice;
import countstave.time.Offset;
import java.util.List;
import java.util.TreeMap;

/** The room that the file's own lyrics need in a bar, one track a verse. */
final class LyricTracks {

    private final Measures measures;
    private final List<Integer> staves;

    /** @param staves those that are drawn */
    LyricTracks(Measures measures, List<Integer> staves) {
        this.measures = measures;
        this.staves = staves;
    }

    /** @param room from the left of the bar to its first note, at least */
    List<Spacing.Track> of(Bar bar, double room) {
        TreeMap<String, TreeMap<Offset, Column>> verses = new TreeMap<>();
        for (Voice voice : bar.voices()) {
            for (Event event : voice.events()) {
                if (event.isGrace() || !staves.contains(event.staff())) {
                    continue;
                }
                for (Lyric lyric : Lyrics.of(event)) {
                    verses.computeIfAbsent(lyric.number(), n -> new TreeMap<>()).merge(event.start(), column(event, lyric, room),
                            Column::with);
                }
            }
        }
        return verses.values().stream().map(v -> new Spacing.Track(List.copyOf(v.values()), Sizes.LYRIC_GAP)).toList();
    }

    private Column column(Event event, Lyric lyric, double room) {
        double half = measures.text().width(Lyrics.words(lyric), Sizes.LYRIC, Text.Style.REGULAR) / 2;
        double shift = event.start().equals(Offset.ZERO) ? Lyrics.shift(half, room) : 0;
        return new Column(event.start(), half - shift, half + shift + hyphenRoom(lyric));
    }

    private static double hyphenRoom(Lyric lyric) {
        boolean goesOn = lyric.syllabic() == Lyric.Syllabic.BEGIN || lyric.syllabic() == Lyric.Syllabic.MIDDLE;
        return goesOn ? Sizes.LYRIC * 0.4 : 0;
    }
}
