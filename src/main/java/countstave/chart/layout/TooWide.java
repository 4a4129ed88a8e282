package countstave.chart.layout;

import countstave.count.BarCounts;
import countstave.grid.Segment;
import countstave.score.Bar;
import countstave.time.Duration;

/** What is told of a bar that the page has no room for, and of one that fills pages by itself, why that may be. */
final class TooWide {

    /** A bar in more lines than these is no music that somebody would write: house choice. */
    private static final int MOST_LINES = 20;
    /** More words to a quarter than these are seldom meant. */
    private static final int MOST_TO_A_QUARTER = 16;

    private TooWide() {
    }

    static String reduced(String part, Bar bar, double factor) {
        return place(part, bar) + "too wide for the page, drawn at " + Math.round(100 * factor)
                + " % of its size; a smaller staff or landscape paper gives it room";
    }

    static String cut(String part, BarCounts counts, int lines) {
        String cut = place(part, counts.bar()) + "too wide for the page, cut before beats into " + lines
                + " lines, with a dashed line at each cut";
        return lines <= MOST_LINES ? cut : cut + "; " + cause(counts);
    }

    private static String place(String part, Bar bar) {
        return "part " + part + ", bar " + bar.called() + ": ";
    }

    private static String cause(BarCounts counts) {
        Bar bar = counts.bar();
        if (!bar.meter().isSenzaMisura() && bar.length().isLongerThan(bar.meter().length().times(2, 1))) {
            long times = bar.length().floorOver(bar.meter().length());
            return "it lasts some " + times + " times as long as " + bar.meter() + ": are barlines missing in the file, or"
                    + " are durations wrong? 'countstave check' says more";
        }
        long most = 0;
        for (Segment segment : counts.plan().segments()) {
            most = Math.max(most, Duration.QUARTER.floorOver(segment.unit()));
        }
        if (most > MOST_TO_A_QUARTER) {
            return "it is counted in up to " + most + " to the quarter, which is seldom meant: are its durations rounded, or notes"
                    + " in it that are for playback? 'countstave check' says more";
        }
        return "is it meant as one bar?";
    }
}
