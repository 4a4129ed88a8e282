package countstave.sound;

import countstave.score.ScoreException;
import countstave.time.Duration;
import countstave.time.Exact;
import java.math.BigDecimal;
import java.util.HashSet;
import java.util.Set;

/**
 * Playing on purpose before or after the click, which itself stays steady.
 *
 * <p>It moves what is <i>played</i> on the chosen beats, in a swung bar from where it sounds. By a note value it grows with
 * a slower tempo; by milliseconds it stays the same.
 *
 * @param beats numbers of the beats on whose start an attack is moved; empty: every attack, on a beat or not
 * @param length later by this note value (earlier if negative), within ±1/8
 * @param seconds later by this time (earlier if negative), within ±0.2 s; one of the two is zero
 */
public record Displacement(Set<Integer> beats, Duration length, Exact seconds) {

    private static final Duration MOST = Duration.of(1, 8);
    private static final Exact MOST_SECONDS = Exact.of(1, 5);

    /** @throws ScoreException if the way is too far */
    public Displacement {
        beats = Set.copyOf(beats);
        if (length.abs().isLongerThan(MOST) || seconds.abs().isMoreThan(MOST_SECONDS)) {
            throw new ScoreException("a beat can be placed at most 1/8 or 200ms early or late");
        }
    }

    /**
     * Reads {@code 2,4=+1/64}, {@code 2,4=-15ms} or {@code all=+10ms}.
     *
     * @throws ScoreException if the text is none of these
     */
    public static Displacement parse(String text) {
        int equals = text.indexOf('=');
        try {
            if (equals < 1) {
                throw new NumberFormatException();
            }
            Set<Integer> beats = new HashSet<>();
            if (!text.substring(0, equals).strip().equals("all")) {
                for (String beat : text.substring(0, equals).split(",", -1)) {
                    beats.add(number(beat));
                }
            }
            String way = text.substring(equals + 1).strip();
            if (way.endsWith("ms")) {
                BigDecimal millis = new BigDecimal(way.substring(0, way.length() - 2).strip());
                if (millis.scale() > 6 || millis.precision() > 12) {
                    throw new NumberFormatException();
                }
                return new Displacement(beats, Duration.ZERO, Exact.of(millis).over(Exact.of(1000)));
            }
            if (way.indexOf('/') < 0) {
                throw new NumberFormatException();
            }
            return new Displacement(beats, Duration.parse(way), Exact.ZERO);
        } catch (NumberFormatException | ArithmeticException e) {
            throw new ScoreException("'" + text + "' does not say which beats are placed where; write"
                    + " 2,4=+1/64 (a note value late), 2,4=-15ms (milliseconds early) or all=+10ms", e);
        }
    }

    private static int number(String beat) {
        int number = Integer.parseInt(beat.strip());
        if (number < 1) {
            throw new NumberFormatException();
        }
        return number;
    }

    /** Whether it moves an attack; {@code beat}: number of the beat that the attack stands on, or 0 for none. */
    public boolean moves(int beat) {
        return beats.isEmpty() || beats.contains(beat);
    }
}
