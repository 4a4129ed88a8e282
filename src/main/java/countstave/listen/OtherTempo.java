package countstave.listen;

import countstave.practice.Stretch;
import countstave.score.BarTimeline;
import countstave.score.Tempo;
import countstave.take.Onset;
import countstave.take.Take;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

/**
 * At which other tempo a take may be of the bars: who learns them slowly may not have said so.
 *
 * @param tempo in the unit of the plan's, to the nearest whole number
 * @param share how much of what is planned and of what is heard belongs to each other, 0 to 1
 * @param figure how well it fits, 0 to 1
 * @param isLikely whether that is told
 */
record OtherTempo(Tempo tempo, double share, double figure, boolean isLikely) {

    /** From one tempo that is tried to the next: each finds what lies 8 % to either side. */
    private static final double STEP = 1.16;
    /** So many steps below the plan's tempo, down to somewhat more than a third of it, and above it, up to one and a half times. */
    private static final int SLOWER = 7;
    private static final int FASTER = 3;

    /** @return null where the bars change their tempo, which no single one could replace */
    static OtherTempo of(PlannedPass pass, Take take) {
        if (!isSteady(pass.stretch())) {
            return null;
        }
        OtherTempo best = null;
        for (int step = -SLOWER; step <= FASTER; step++) {
            double speed = Math.pow(STEP, step);
            Fit fit = step == 0 ? null : Fit.of(pass, sped(take, speed), 0);
            if (fit != null && (best == null || fit.figure() > best.figure)) {
                best = of(PiecewiseFit.of(fit, 0), speed);
            }
        }
        return best;
    }

    private static OtherTempo of(PiecewiseFit pieces, double speed) {
        Fit fit = pieces.fits().get(0);
        Alignment own = fit.alignment();
        int last = own.plan().length - 1;
        double played = speed * (own.plan()[last] - own.plan()[0]) / (own.expected()[last] - own.expected()[0]);
        Tempo plan = fit.pass().stretch().tempo();
        BigDecimal perMinute = plan.perMinute().multiply(BigDecimal.valueOf(played)).setScale(0, RoundingMode.HALF_UP).max(BigDecimal.ONE);
        return new OtherTempo(new Tempo(plan.unit(), perMinute), pieces.share(), pieces.figure(), BestGuess.isLikely(pieces));
    }

    /** As if it had been played so much faster. */
    private static Take sped(Take take, double speed) {
        List<Onset> onsets = take.onsets().stream().map(onset -> new Onset(onset.second() * speed, onset.level())).toList();
        return new Take(take.name(), take.kind(), take.seconds() * speed, onsets, List.of(), List.of(), List.of());
    }

    private static boolean isSteady(Stretch stretch) {
        Tempo first = stretch.timeline(0).tempo();
        for (int bar = 0; bar < stretch.size(); bar++) {
            BarTimeline timeline = stretch.timeline(bar);
            if (!timeline.tempo().equals(first) || timeline.tempi().stream().anyMatch(change -> !change.tempo().equals(first))) {
                return false;
            }
        }
        return true;
    }
}
