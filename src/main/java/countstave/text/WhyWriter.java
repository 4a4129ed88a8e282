package countstave.text;

import countstave.count.UnitName;
import countstave.grid.Explanation;
import countstave.grid.Segment;
import countstave.grid.Term;
import countstave.plain.SafeText;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Part;
import countstave.time.Duration;
import countstave.time.Offset;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Prints why each bar is counted as it is: what its count costs and what of, and how the next best plan would count the
 * bar and how much more that costs.
 */
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
                .append(" (1 is one word that is said and not played; the count of least cost over the whole part is taken)\n");
        for (Explanation why : bars) {
            out.append("  bar ").append(SafeText.of(why.bar().bar().called())).append(": costs ")
                    .append(points(why.cost())).append(terms(why)).append('\n');
            if (!why.other().isEmpty()) {
                out.append("      next best, ").append(why.extra() == 0 ? "at the same cost" : points(why.extra()) + " more")
                        .append(": ").append(count(why.bar(), why.other())).append('\n');
            }
        }
    }

    private static String terms(Explanation why) {
        return why.terms().isEmpty() ? "" : why.terms().entrySet().stream()
                .map(term -> name(term.getKey()) + " " + points(term.getValue())).collect(Collectors.joining(", ", ": ", ""));
    }

    private static String name(Term term) {
        return switch (term) {
            case UNPLAYED -> "said and not played";
            case CHANGES -> "changes";
            case FLICKER -> "back to a count just left";
            case SPEED -> "speed of the words";
            case RARE -> "rare divisions";
            case HIDDEN -> "beats not said";
            case FELT -> "notes felt";
        };
    }

    /** {@code 16ths, 8th triplets from beat 2}. */
    private String count(BarTimeline bar, List<Segment> segments) {
        StringBuilder text = new StringBuilder();
        for (Segment segment : segments) {
            text.append(text.isEmpty() ? "" : ", ").append(unit(bar, segment));
            if (!segment.start().equals(Offset.ZERO)) {
                text.append(" from ").append(place(bar, segment.start()));
            }
        }
        return text.toString();
    }

    private String unit(BarTimeline bar, Segment segment) {
        Duration beat = bar.beatAt(segment.start()).length();
        String name = UnitName.of(segment.unit(), beat, options.names());
        return segment.isSpan() ? name + " counted through" : segment.isSwung() ? "swung " + name : name;
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
