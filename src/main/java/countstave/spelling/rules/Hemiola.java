package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.respell.MeterFrame;
import countstave.spelling.respell.Span;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * A bar of two dotted beats that is laid out as three plain ones: an old and deliberate play with the meter, which
 * readers know, and not a mistake of spelling (common practice, no source).
 */
final class Hemiola {

    private Hemiola() {
    }

    /** Whether the stretch of two dotted beats around {@code at} is written in three equal parts in this voice. */
    static boolean covers(BarView bar, Voice voice, Offset at) {
        Span pair = pair(bar.frame(), at);
        if (pair == null) {
            return false;
        }
        Duration third = pair.length().dividedBy(3);
        List<Offset> edges = new ArrayList<>();
        for (Event event : BarView.timed(voice)) {
            edges.add(event.start());
        }
        return edges.contains(pair.start().plus(third)) && edges.contains(pair.start().plus(third.times(2)));
    }

    /** Whether a stretch begins and ends on the three parts that {@link #covers} speaks of. */
    static boolean fits(BarView bar, Offset start, Offset end) {
        Span pair = pair(bar.frame(), start);
        Duration third = pair == null ? null : pair.length().dividedBy(3);
        return pair != null && start.minus(pair.start()).isMultipleOf(third) && end.minus(pair.start()).isMultipleOf(third);
    }

    /** The bar or half bar around {@code at} if it consists of two parts of three; else null. */
    private static Span pair(MeterFrame frame, Offset at) {
        List<Span> candidates = new ArrayList<>(List.of(frame.bar()));
        candidates.addAll(frame.bar().parts());
        for (Span span : candidates) {
            boolean around = at.isWithin(span.start(), span.end());
            if (around && span.parts().size() == 2 && span.parts().stream().allMatch(p -> p.parts().size() == 3)) {
                return span;
            }
        }
        return null;
    }
}
