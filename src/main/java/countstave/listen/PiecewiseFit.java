package countstave.listen;

import countstave.take.Take;
import countstave.time.Exact;
import java.util.ArrayList;
import java.util.List;

/**
 * A passage laid on a take piece by piece: one piece, or several where the player stopped between two times through and began
 * anew. Each piece has its own start and tempo.
 *
 * <p>A stop is looked for where nothing is heard for longer than anything in the passage lasts. Of all ways to cut the take
 * there, that one is taken which explains most strokes, each cut costing some.
 *
 * @param fits in the order of time, at least one; each but the last has all strokes of its repeats
 * @param heard how many strokes the take has, flams made one
 */
record PiecewiseFit(List<Fit> fits, int heard) {

    /** A silence is longer than the longest in the passage by this share of a beat; and a stop lasts at least that. */
    private static final double STOP = 0.5;
    /** A cut has to explain this share of a passage's strokes. */
    private static final double CUT = 0.25;
    /** A piece has about one time through at least: fewer strokes fit by chance. */
    private static final double ONCE = 0.8;
    /** So many silences within a piece may come from strokes that were missed. */
    private static final int SILENCES = 3;
    private static final int MOST_SILENCES = 200;

    /** Of the strokes up to some silence: what is explained, and by which pieces. */
    private record Cut(double gain, List<Fit> fits) {
    }

    /**
     * @param repeats how many times it was played; 0: as many as fit
     * @throws IllegalArgumentException if the passage has no stroke
     */
    static PiecewiseFit of(PlannedPass pass, Take take, int repeats) {
        return of(Fit.of(pass, take, repeats), repeats);
    }

    /** Of a passage that was laid on the take in one piece: the same piece, or several that explain more. */
    static PiecewiseFit of(Fit whole, int repeats) {
        PlannedPass pass = whole.pass();
        HeardStrokes heard = whole.heard();
        List<Integer> ends = silences(pass, heard);
        if (ends.size() == 2 || ends.size() > MOST_SILENCES || whole.isWell()) {
            return new PiecewiseFit(List.of(whole), heard.size());
        }
        Cut cut = best(pass, heard, ends);
        int times = cut.fits.stream().mapToInt(Fit::repeats).sum();
        double needed = whole.isBelieved() ? whole.alignment().gain(heard) : 0;
        return cut.fits.size() < 2 || cut.gain <= needed || repeats > 0 && times != repeats ? new PiecewiseFit(List.of(whole), heard.size())
                : new PiecewiseFit(List.copyOf(cut.fits), heard.size());
    }

    /** Where the strokes behind each long silence begin, from the first stroke to behind the last. */
    private static List<Integer> silences(PlannedPass pass, HeardStrokes heard) {
        List<PlannedStroke> strokes = pass.strokes();
        Exact longest = pass.period().minus(strokes.get(strokes.size() - 1).second()).plus(strokes.get(0).second());
        for (int i = 1; i < strokes.size(); i++) {
            Exact gap = strokes.get(i).second().minus(strokes.get(i - 1).second());
            longest = longest.isLessThan(gap) ? gap : longest;
        }
        double silence = longest.toDouble() * (1 + StartSearch.WITHIN) + STOP * beat(pass);
        List<Integer> ends = new ArrayList<>(List.of(0));
        for (int i = 1; i < heard.size(); i++) {
            if (heard.seconds()[i] - heard.seconds()[i - 1] > silence) {
                ends.add(i);
            }
        }
        ends.add(heard.size());
        return ends;
    }

    private static double beat(PlannedPass pass) {
        return pass.runs().get(0).beatSeconds().toDouble();
    }

    private static Cut best(PlannedPass pass, HeardStrokes heard, List<Integer> ends) {
        int fewest = (int) Math.ceil(Math.max(2, ONCE * pass.strokes().size()));
        List<Cut> best = new ArrayList<>(List.of(new Cut(0, List.of())));
        for (int to = 1; to < ends.size(); to++) {
            // a word, a cough, a count-in
            Cut most = best.get(to - 1);
            for (int from = Math.max(0, to - SILENCES); from < to; from++) {
                if (ends.get(to) - ends.get(from) >= fewest) {
                    Cut more = with(best.get(from), Fit.of(pass, heard.part(ends.get(from), ends.get(to)), 0));
                    most = more.gain > most.gain ? more : most;
                }
            }
            best.add(most);
        }
        return best.get(best.size() - 1);
    }

    /** With a piece more; explains nothing where it is none, or does not begin later than the piece before it ends. */
    private static Cut with(Cut before, Fit fit) {
        Cut none = new Cut(Double.NEGATIVE_INFINITY, List.of());
        if (!fit.isBelieved() || fit.alignment().matched() < ONCE * fit.pass().strokes().size()) {
            return none;
        }
        double gain = fit.alignment().gain(fit.heard());
        if (before.fits.isEmpty()) {
            return new Cut(gain, List.of(fit));
        }
        List<Fit> fits = new ArrayList<>(before.fits);
        int last = fits.size() - 1;
        fits.set(last, fits.get(last).uncut());
        fits.add(fit);
        double missed = before.fits.get(last).alignment().gain(before.fits.get(last).heard())
                - fits.get(last).alignment().gain(fits.get(last).heard());
        return pause(fits, fits.size() - 1).beats() < STOP ? none
                : new Cut(before.gain - missed + gain - CUT * fit.pass().strokes().size(), fits);
    }

    /** Before the piece of this number. */
    private static Pause pause(List<Fit> fits, int number) {
        int repeat = 0;
        for (int i = 0; i < number; i++) {
            repeat += fits.get(i).repeats();
        }
        Fit before = fits.get(number - 1);
        double seconds = fits.get(number).start() - before.end();
        double speed = (before.end() - before.start()) / (before.repeats() * before.pass().period().toDouble());
        return new Pause(repeat, seconds, seconds / (speed * beat(before.pass())));
    }

    /** Between the pieces. */
    List<Pause> pauses() {
        List<Pause> pauses = new ArrayList<>();
        for (int i = 1; i < fits.size(); i++) {
            pauses.add(pause(fits, i));
        }
        return List.copyOf(pauses);
    }

    /** One number for how well it fits, 0 to 1: of several pieces by the least, and by how much of the take they cover together. */
    double figure() {
        double covered = fits.stream().mapToDouble(fit -> fit.alignment().matched()).sum();
        return fits.stream().mapToDouble(Fit::closeness).min().orElseThrow() * covered / heard;
    }

    boolean isBelieved() {
        return fits.stream().allMatch(Fit::isBelieved);
    }

    /** The share of strokes, planned and heard, that belong to each other; of several pieces of the least. */
    double share() {
        return fits.stream().mapToDouble(Fit::share).min().orElseThrow();
    }
}
