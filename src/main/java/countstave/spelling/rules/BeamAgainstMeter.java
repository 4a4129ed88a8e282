package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.spelling.respell.MeterFrame;
import countstave.spelling.respell.Span;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.List;

/** {@code beam-against-meter}. */
final class BeamAgainstMeter extends VoiceRule {

    /** A half bar of this length or less needs no beam of its own. */
    private static final Duration SHORT_HALF = Duration.of(1, 4);

    BeamAgainstMeter() {
        super(new RuleInfo("beam-against-meter", Severity.WARNING,
                "A beam runs across the middle of a 4/4 bar or across a dotted beat, or makes two halves of a 3/4 bar.",
                "Beams show the beats; a beam across them makes one meter look like another.",
                null,
                "4/4 in eighths, beamed 3 + 3 + 2; 3/4 in eighths, beamed 3 + 3",
                "4/4 in eighths, beamed 4 + 4; 3/4 with all six eighths under one beam",
                "Music Fundamentals: A Balanced Approach (chapter on beams in compound meter); " + Sources.READ));
    }

    @Override
    void check(BarView bar, Voice voice, Findings findings) {
        if (!bar.isReadable()) {
            return;
        }
        for (BeamRun run : BeamRun.of(voice)) {
            if (!run.events().stream().allMatch(BarView::isOrdinary)) {
                continue;
            }
            Offset wall = wall(bar.frame(), run);
            if (wall != null && !isDeliberate(bar, voice, run)) {
                findings.add(bar, voice.name(), run.first(), p -> p.text("found.beam-across", bar.beatName(wall)), null);
            }
        }
        if (bar.frame().beats().size() == 3 && !bar.frame().isCompound()) {
            halves(bar, voice, findings);
        }
    }

    /** The boundary that the beam should not cross, or null. */
    private static Offset wall(MeterFrame frame, BeamRun run) {
        Offset start = run.first().start();
        Offset last = run.last().start();
        // one beam over whole beats, such as all six eighths of 6/8, shows nothing that is not there
        if (frame.isBeatStart(start) && frame.isBeatStart(run.last().end())
                && (frame.isCompound() || start.equals(frame.bar().start()) && run.last().end().equals(frame.bar().end()))) {
            return null;
        }
        for (Offset wall : walls(frame)) {
            boolean crosses = start.isBefore(wall) && !last.isBefore(wall);
            // a tuplet, or a tied-over syncopation, that itself lies across the boundary leaves nothing to break
            boolean breakable = run.events().stream().anyMatch(e -> e.start().equals(wall));
            if (crosses && breakable) {
                return wall;
            }
        }
        return null;
    }

    /** A hemiola, or a row of pairs that all lie across the beats, such as off-beat slurs. */
    private static boolean isDeliberate(BarView bar, Voice voice, BeamRun run) {
        if (Hemiola.covers(bar, voice, run.first().start())
                && Hemiola.fits(bar, run.first().start(), run.last().end())) {
            return true;
        }
        return run.events().size() == 2 && BeamRun.of(voice).stream()
                .filter(r -> r.events().size() == 2 && liesAcross(bar.frame(), r)).count() > 1;
    }

    private static boolean liesAcross(MeterFrame frame, BeamRun run) {
        return !frame.isBeatStart(run.first().start()) && !frame.isBeatStart(run.last().end());
    }

    private static List<Offset> walls(MeterFrame frame) {
        List<Span> parts = frame.bar().parts();
        if (frame.isCompound()) {
            return frame.beats().stream().skip(1).map(Span::start).toList();
        }
        // 4/8 is beamed like 2/4, in which four eighths under one beam hide nothing
        boolean halves = parts.size() == 2 && parts.get(0).level() == Span.Level.GROUP
                && parts.get(0).length().isLongerThan(SHORT_HALF);
        return halves ? List.of(parts.get(1).start()) : List.of();
    }

    /** 3 + 3 eighths in three quarters: beams that make 6/8 of it. */
    private static void halves(BarView bar, Voice voice, Findings findings) {
        List<BeamRun> runs = BeamRun.of(voice);
        Duration half = bar.frame().bar().length().dividedBy(2);
        if (runs.size() != 2 || !bar.bar().phase().isZero()) {
            return;
        }
        for (BeamRun run : runs) {
            List<Event> events = run.events();
            boolean eighths = events.size() == 3 && events.stream().allMatch(BarView::isPlain)
                    && events.stream().allMatch(e -> e.length().equals(half.dividedBy(3)));
            if (!eighths) {
                return;
            }
        }
        Offset middle = bar.frame().bar().start().plus(half);
        if (runs.get(0).first().start().equals(Offset.ZERO) && runs.get(1).first().start().equals(middle)) {
            findings.add(bar, voice.name(), runs.get(0).first(),
                    p -> p.text("found.beam-halves"), null);
        }
    }
}
