package countstave.take;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Found onsets against known ones as the yearly onset evaluation counts them (MIREX, Audio Onset Detection: a detection
 * within the window around a true onset is right, each counts once).
 */
record OnsetScore(int right, int found, int known, double median, double most95) {

    static OnsetScore of(List<Double> found, List<Double> known, double window) {
        int at = 0;
        List<Double> errors = new ArrayList<>();
        for (double truth : known) {
            while (at < found.size() && found.get(at) < truth - window) {
                at++;
            }
            if (at < found.size() && found.get(at) <= truth + window) {
                errors.add(Math.abs(found.get(at) - truth));
                at++;
            }
        }
        errors.sort(null);
        int n = errors.size();
        return new OnsetScore(n, found.size(), known.size(), n == 0 ? 1 : errors.get(n / 2), n == 0 ? 1 : errors.get((int) (0.95 * n)));
    }

    double precision() {
        return found == 0 ? 0 : (double) right / found;
    }

    double recall() {
        return (double) right / known;
    }

    double f() {
        return 2 * precision() * recall() / Math.max(1e-9, precision() + recall());
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "P %.3f R %.3f F %.3f, median error %.2f ms, 95 %% within %.2f ms", precision(), recall(), f(),
                1000 * median, 1000 * most95);
    }
}
