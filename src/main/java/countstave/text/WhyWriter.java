package countstave.text;

import countstave.count.UnitName;
import countstave.grid.Explanation;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Part;
import countstave.time.Duration;
import countstave.time.Offset;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;

/** Prints why each bar is counted as it is: what its count costs, and how much more the next best plan would. */
public final class WhyWriter {

    private final Appendable out;
    private final TextOptions options;

    /** @param out where the text goes, lines ended by {@code \n}; not closed here */
    public WhyWriter(Appendable out, TextOptions options) {
        this.out = out;
        this.options = options;
    }

    /** Prints one part. */
    public void part(Part part, List<Explanation> bars) throws IOException {
        out.append('\n').append("why, ").append(SafeText.of(part.name()))
                .append(" (1 for each count that is said and not played; changes, speed and rare divisions cost more)\n");
        for (Explanation why : bars) {
            out.append("  bar ").append(SafeText.of(why.bar().bar().number())).append(": costs ")
                    .append(points(why.cost()));
            if (why.otherUnit() != null) {
                out.append("; ").append(unit(why)).append(" from ").append(place(why.bar(), why.otherFrom()))
                        .append(why.extra() == 0 ? " would cost the same" : " would cost " + points(why.extra()) + " more");
            }
            out.append('\n');
        }
    }

    private String unit(Explanation why) {
        Duration beat = why.bar().beatAt(why.otherFrom()).length();
        String name = UnitName.of(why.otherUnit(), beat, options.names());
        return why.otherIsSpan() ? name + " counted through" : name;
    }

    /** {@code beat 3}, or {@code inside beat 2}. */
    private static String place(BarTimeline bar, Offset at) {
        Beat beat = bar.beatAt(at);
        return (beat.start().equals(at) ? "beat " : "inside beat ") + beat.number();
    }

    /** Thousandths as a plain number. */
    private static String points(long thousandths) {
        return BigDecimal.valueOf(thousandths, 3).stripTrailingZeros().toPlainString();
    }
}
