package countstave.chart;

import countstave.chart.layout.ChangeLabels;
import countstave.count.PartCounts;
import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.NoteValue;
import countstave.time.Duration;

/** The words of the marks and of the line at the foot. */
final class PlainLabels implements ChangeLabels {

    @Override
    public String change(BarTimeline bar, Segment segment, Segment before) {
        Beat beat = bar.beatAt(segment.start());
        Duration perBeat = beat.length().over(segment.unit());
        String words = segment.isSpan() ? "1–" + segment.positions()
                : perBeat.denominator() == 1 ? perBeat.numerator() + " to the " + note(beat.length()) : segment.unit() + "";
        if (before != null && !before.unit().equals(segment.unit())) {
            Duration ratio = before.unit().over(segment.unit());
            words += ", ×" + ratio.numerator() + (ratio.denominator() == 1 ? "" : "⁄" + ratio.denominator());
        }
        return words;
    }

    private static String note(Duration length) {
        NoteValue value = NoteValue.ofLength(length);
        NoteValue dotted = NoteValue.ofLength(length.times(2, 3));
        if (value != null) {
            return sign(value);
        }
        return dotted != null ? sign(dotted) + "." : length.toString();
    }

    private static String sign(NoteValue value) {
        return switch (value) {
            case HALF -> new String(Character.toChars(0x1D15E));
            case QUARTER -> "♩";
            case EIGHTH -> "♪";
            case SIXTEENTH -> new String(Character.toChars(0x1D161));
            default -> value.xmlName();
        };
    }

    @Override
    public String key(PartCounts counts) {
        String spoken = counts.system().key();
        return counts.system().title() + (spoken.isEmpty() ? "" : "; " + spoken)
                + ". Bold: played. In parentheses: said, not played. A thick bar: the count changes.";
    }
}
