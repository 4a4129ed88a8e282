package countstave.listen;

import java.util.Arrays;
import java.util.List;

/** The guesses of {@link StartSearch} for one take: a plan of more or fewer repeats begins alike, and is searched for once. */
final class Starts {

    private final HeardStrokes heard;
    private double[] beginning = {};
    private List<StartSearch.Guess> guesses = List.of();

    Starts(HeardStrokes heard) {
        this.heard = heard;
    }

    HeardStrokes heard() {
        return heard;
    }

    /** @param plan seconds of the planned strokes, at least one */
    List<StartSearch.Guess> of(double[] plan) {
        double[] now = Arrays.copyOf(plan, StartSearch.looked(plan));
        if (!Arrays.equals(now, beginning)) {
            beginning = now;
            guesses = new StartSearch(now, heard).guesses();
        }
        return guesses;
    }
}
