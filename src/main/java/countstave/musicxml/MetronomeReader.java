package countstave.musicxml;

import countstave.score.Direction.MetronomeMark;
import countstave.time.Duration;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.audiveris.proxymusic.Metronome;

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
                second == null ? 0 : second.dots());
    }

    /** What the mark does to the tempo, or null if nothing. */
    static TempoMark tempo(Metronome metronome, List<MetronomeTrail.Side> sides, Offset at) {
        if (sides.size() > 1) {
            return change(at, sides.get(0).length(), sides.get(1).length());
        }
        if (sides.size() == 1 && metronome.getPerMinute() != null) {
            Matcher number = NUMBER.matcher(Plain.line(metronome.getPerMinute().getValue()));
            return !number.find() ? null : TempoMark.metronome(at, sides.get(0).length(),
                    new BigDecimal(number.group().replace(',', '.')));
        }
        return null;
    }

    private static TempoMark change(Offset at, Duration from, Duration to) {
        return from.equals(to) ? null : TempoMark.modulation(at, from, to);
    }
}
