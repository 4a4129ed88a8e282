package countstave.spelling.respell;

import countstave.score.Bar;
import countstave.score.Meter;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * How a bar is divided for the eye: the tree from the bar over its half and its beats to the parts of a beat.
 *
 * <p>This is the order in which notes, rests and beams are laid out on paper, so it does not depend on the tempo: 4/4
 * and 2/2 have a middle and four quarters, 6/8 two dotted quarters, 12/8 a middle and four of them, 3/4 three quarters.
 * Additive signatures give their own groups. Source: common practice, as in the chapters on meter of Gardner Read,
 * <i>Music Notation</i>, and Elaine Gould, <i>Behind Bars</i> (from memory).
 */
public final class MeterFrame {

    private final Span bar;
    private final List<Span> beats;
    private final boolean sure;
    private final boolean compound;

    private MeterFrame(Span bar, boolean sure, boolean compound) {
        this.bar = bar;
        this.sure = sure;
        this.compound = compound;
        List<Span> found = new ArrayList<>();
        collectBeats(bar, found);
        this.beats = List.copyOf(found);
    }

    /** The frame of a written bar; in a pickup the bar's start lies {@link Bar#phase} inside it. */
    public static MeterFrame of(Bar bar) {
        if (bar.meter().isSenzaMisura()) {
            Duration length = bar.length().isPositive() ? bar.length() : Duration.WHOLE;
            return new MeterFrame(new Span(Offset.ZERO, length, Span.Level.BAR, List.of()), false, false);
        }
        return of(bar.meter(), Offset.ZERO.minus(bar.phase()));
    }

    /** The frame of a full bar of {@code meter}, which must not be senza misura. */
    public static MeterFrame of(Meter meter) {
        return of(meter, Offset.ZERO);
    }

    private static MeterFrame of(Meter meter, Offset start) {
        FrameBuilder builder = new FrameBuilder(meter, start);
        return new MeterFrame(builder.bar(), builder.isSure(), builder.isCompound());
    }

    private static void collectBeats(Span span, List<Span> into) {
        if (span.level() == Span.Level.BEAT || span.given().isEmpty()) {
            into.add(span);
        } else {
            span.given().forEach(part -> collectBeats(part, into));
        }
    }

    /** The whole bar. */
    public Span bar() {
        return bar;
    }

    /** The beats as they are written, in order. */
    public List<Span> beats() {
        return beats;
    }

    /** Whether the signature alone settles the beats: not for 5/8 or 7/8 without a sum, nor for senza misura. */
    public boolean isSure() {
        return sure;
    }

    /** Whether the beats are dotted values (6/8, 9/8, 12/8 ...). */
    public boolean isCompound() {
        return compound;
    }

    /** The beat that holds {@code at}; the last one for a position at or beyond the bar's end. */
    public Span beatAt(Offset at) {
        Span found = beats.get(0);
        for (Span beat : beats) {
            if (beat.start().isAfter(at)) {
                break;
            }
            found = beat;
        }
        return found;
    }

    public boolean isBeatStart(Offset at) {
        return beatAt(at).start().equals(at) || at.equals(bar.end());
    }

    /** Deeper than any note value goes. */
    static final int NOWHERE = 20;

    /** Whether {@code at} can be reached with plain note values, without a tuplet. */
    public boolean isPlain(Offset at) {
        return isPowerOfTwo(at.minus(bar.start()).denominator());
    }

    static boolean isPowerOfTwo(long n) {
        return n > 0 && (n & (n - 1)) == 0;
    }
}
