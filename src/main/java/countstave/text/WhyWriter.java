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
import java.util.Locale;
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
        out.append('\n').append(options.phrase("why.heading", SafeText.of(part.name()))).append('\n');
        for (Explanation why : bars) {
            out.append("  ").append(options.phrase("why.bar", SafeText.of(why.bar().bar().called()), points(why.cost())))
                    .append(terms(why)).append('\n');
            if (!why.other().isEmpty()) {
                String count = count(why.bar(), why.other());
                out.append("      ").append(why.extra() == 0 ? options.phrase("why.next.same", count)
                        : options.phrase("why.next", points(why.extra()), count)).append('\n');
            }
        }
    }

    private String terms(Explanation why) {
        return why.terms().isEmpty() ? "" : why.terms().entrySet().stream()
                .map(term -> name(term.getKey()) + " " + points(term.getValue())).collect(Collectors.joining(", ", ": ", ""));
    }

    private String name(Term term) {
        return options.phrase("why.term." + term.name().toLowerCase(Locale.ROOT));
    }

    /** {@code 16ths, 8th triplets from beat 2}. */
    private String count(BarTimeline bar, List<Segment> segments) {
        StringBuilder text = new StringBuilder();
        for (Segment segment : segments) {
            text.append(text.isEmpty() ? "" : ", ").append(unit(bar, segment));
            if (!segment.start().equals(Offset.ZERO)) {
                text.append(' ').append(options.phrase("why.from", place(bar, segment.start())));
            }
        }
        return text.toString();
    }

    private String unit(BarTimeline bar, Segment segment) {
        Duration beat = bar.beatAt(segment.start()).length();
        String name = UnitName.of(segment.unit(), beat, options.names());
        return segment.isSpan() ? options.phrase("why.through", name) : segment.isSwung() ? options.phrase("why.swung", name) : name;
    }

    /** {@code beat 3}, or {@code inside beat 2}. */
    private String place(BarTimeline bar, Offset at) {
        Beat beat = bar.beatAt(at);
        return options.phrase(beat.start().equals(at) ? "why.beat" : "why.inside-beat", String.valueOf(beat.number()));
    }

    /** Thousandths as a plain number. */
    private String points(long thousandths) {
        return options.names().phrases().decimal(BigDecimal.valueOf(thousandths, 3).stripTrailingZeros());
    }
}
