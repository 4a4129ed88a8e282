package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Meter;
import countstave.score.Part;
import countstave.score.Score;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.PartView;
import countstave.spelling.respell.MeterFrame;
import countstave.spelling.respell.Span;
import countstave.time.Proportion;
import java.util.ArrayList;
import java.util.List;

/**
 * Stretches of a score under one signature, with a tally of how its beats are divided in all parts together.
 *
 * @param first index of the first bar
 * @param last index of the last bar
 * @param tally how the beats are divided
 */
record Stretches(int first, int last, Tally tally) {

    /** Beats divided in two (or four), in three (or six), in anything else; and bars with any division in each way. */
    static final class Tally {
        int twos;
        int threes;
        int others;
        int barsOfTwos;
        int barsOfThrees;
    }

    static List<Stretches> of(PartView part) {
        List<Stretches> found = new ArrayList<>();
        Tally tally = new Tally();
        int first = 0;
        Meter meter = null;
        for (BarView bar : part.bars()) {
            int index = bar.bar().index();
            if (meter != null && !meter.components().equals(bar.bar().meter().components())) {
                found.add(new Stretches(first, index - 1, tally));
                tally = new Tally();
                first = index;
            }
            meter = bar.bar().meter();
            count(part.score(), index, bar.frame(), tally);
        }
        if (meter != null) {
            found.add(new Stretches(first, part.bars().size() - 1, tally));
        }
        return found;
    }

    private static void count(Score score, int index, MeterFrame frame, Tally tally) {
        int twos = tally.twos;
        int threes = tally.threes;
        for (Part part : score.parts()) {
            if (index < part.bars().size()) {
                part.bars().get(index).voices().forEach(voice -> count(voice, frame, tally));
            }
        }
        tally.barsOfTwos += tally.twos > twos ? 1 : 0;
        tally.barsOfThrees += tally.threes > threes ? 1 : 0;
    }

    private static void count(Voice voice, MeterFrame frame, Tally tally) {
        for (Span beat : frame.beats()) {
            boolean two = false;
            boolean three = false;
            boolean other = false;
            for (Event event : voice.events()) {
                if (!event.isNote() || event.isGrace() || !event.start().isWithin(beat.start(), beat.end())) {
                    continue;
                }
                Proportion into = event.start().minus(beat.start()).over(beat.length());
                long parts = into.denominator();
                two |= parts == 2 || parts == 4 || parts == 8;
                three |= parts == 3 || parts == 6 || parts == 12;
                other |= parts > 1 && parts % 3 != 0 && Long.bitCount(parts) > 1;
            }
            tally.twos += two && !three ? 1 : 0;
            tally.threes += three ? 1 : 0;
            tally.others += other ? 1 : 0;
        }
    }
}
