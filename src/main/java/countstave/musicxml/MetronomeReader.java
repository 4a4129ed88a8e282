package countstave.musicxml;

import countstave.score.Direction.MetronomeMark;
import countstave.score.Swing;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.math.BigDecimal;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.audiveris.proxymusic.Metronome;
import org.audiveris.proxymusic.YesNo;

/**
 * A printed {@code metronome} mark: "value = number", "value = value", or a row of small notes on either side.
 */
final class MetronomeReader {

    private static final Pattern NUMBER = Pattern.compile("\\d{1,6}(?:[.,]\\d{1,6})?");

    private MetronomeReader() {
    }

    /** The mark as printed, or null if it has no value. */
    static MetronomeMark mark(Metronome metronome, List<MetronomeTrail.Side> sides) {
        if (sides.isEmpty()) {
            return null;
        }
        MetronomeTrail.Side first = sides.get(0);
        MetronomeTrail.Side second = sides.size() > 1 ? sides.get(1) : null;
        String perMinute = metronome.getPerMinute() == null ? null
                : Plain.line(metronome.getPerMinute().getValue());
        return new MetronomeMark(first.value(), first.dots(), perMinute, second == null ? null : second.value(),
                second == null ? 0 : second.dots(), metronome.getParentheses() == YesNo.YES);
    }

    /** What the mark does to the tempo, or null if nothing. */
    static TempoMark tempo(Metronome metronome, List<MetronomeTrail.Side> sides, Offset at) {
        if (sides.size() > 1) {
            return change(at, sides.get(0).length(), sides.get(1).length());
        }
        if (sides.size() == 1 && metronome.getPerMinute() != null) {
            Matcher number = NUMBER.matcher(Plain.line(metronome.getPerMinute().getValue()));
            return !number.find() ? null : TempoMark.metronome(at, sides.get(0).length(),
                    new BigDecimal(number.group().replace(',', '.')), metronome.getPrintObject() != YesNo.NO);
        }
        return null;
    }

    /**
     * What an equation of two equal notes with a long and a short one says: two eighths are a quarter and an eighth under
     * a three (the example of {@code metronome-tuplet} in MusicXML 4.0). Null where the mark is another.
     */
    static Swing swing(List<MetronomeTrail.Side> sides) {
        if (sides.size() != 2 || sides.get(0).notes().size() != 2 || sides.get(1).notes().size() != 2) {
            return null;
        }
        Duration unit = sides.get(0).notes().get(0);
        Proportion ratio = sides.get(1).notes().get(0).over(sides.get(1).notes().get(1));
        boolean pair = unit.equals(sides.get(0).notes().get(1)) && sides.get(0).length().equals(sides.get(1).length())
                && (unit.equals(Swing.EIGHTH) || unit.equals(Swing.SIXTEENTH));
        if (!pair || ratio.numerator() > Swing.LARGEST || ratio.denominator() > Swing.LARGEST) {
            return null;
        }
        return new Swing(unit, (int) ratio.numerator(), (int) ratio.denominator());
    }

    private static TempoMark change(Offset at, Duration from, Duration to) {
        return from.equals(to) ? null : TempoMark.modulation(at, from, to);
    }
}
