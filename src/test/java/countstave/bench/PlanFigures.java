package countstave.bench;

import countstave.grid.BarPlan;
import countstave.grid.PartPlan;
import countstave.grid.PlanOptions;
import countstave.grid.Planner;
import countstave.grid.Segment;
import countstave.musicxml.OwnMarks;
import countstave.musicxml.ReadOptions;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.score.BarTimeline;
import countstave.score.Part;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.ScoreException;
import countstave.score.Selection;
import countstave.score.Timeline;
import countstave.testing.Corpus;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** How the plans of the open corpus count, in figures: where they change, how fast they are, whether they flicker. */
class PlanFigures {

    private static final double LIMIT = PlanOptions.DEFAULT_VOICE_LIMIT.doubleValue();

    private int bars;
    private int changes;
    private int offBeat;
    private int slowerInBeat;
    private int tooFast;
    private int tooFastThatHalves;
    private int flicker;
    private final int[] alike = new int[2];
    private final int[] unforced = new int[2];
    private Segment before;
    private Duration first;
    private Offset second = Offset.ZERO;
    private Duration secondUnit;

    @Test
    void corpus() throws IOException {
        List<Path> scores = new ArrayList<>(Corpus.scores());
        scores.addAll(Corpus.demo());
        for (Path file : scores) {
            add(file);
        }
        System.out.printf(Locale.ROOT, "bars %d, changes %d, off the beat %d (%.1f %%), slower inside a beat %d, segments above"
                + " 1.25 of the voice limit %d (of a unit that halves %d), there and back within a bar %d, bars alike that are"
                + " counted otherwise %d of %d (%.1f %%), among the same neighbours %d of %d (%.1f %%)%n", bars, changes, offBeat, 100.0 * offBeat / changes, slowerInBeat,
                tooFast, tooFastThatHalves, flicker, alike[0], alike[1], 100.0 * alike[0] / alike[1],
                unforced[0], unforced[1], 100.0 * unforced[0] / unforced[1]);
    }

    private void add(Path file) throws IOException {
        Score score;
        try {
            ScoreFile read = ScoreFile.of(file.getFileName().toString(), Files.readAllBytes(file));
            score = ScoreReader.read(read.withText(OwnMarks.strip(read.text())), ReadOptions.DEFAULT);
        } catch (ScoreException e) {
            return;
        }
        for (Part part : score.parts()) {
            if (part.hasNotes()) {
                try {
                    add(Planner.plan(Timeline.of(part, Selection.ALL, PulseChoice.BY_METER, null), PlanOptions.DEFAULT));
                } catch (ScoreException e) {
                    // notes of a file that fit no grid
                }
            }
        }
    }

    private void add(PartPlan plan) {
        before = null;
        first = null;
        secondUnit = null;
        Map<List<Object>, Map<List<Object>, Integer>> counted = new HashMap<>();
        Map<List<Object>, Map<List<Object>, Integer>> amongTheSame = new HashMap<>();
        for (int b = 0; b < plan.bars().size(); b++) {
            BarPlan bar = plan.bars().get(b);
            bars++;
            List<Object> said = new ArrayList<>();
            for (Segment segment : bar.segments()) {
                add(bar.timeline(), segment);
                said.add(List.of(segment.start(), segment.unit(), segment.isSpan()));
            }
            BarTimeline t = bar.timeline();
            List<Object> kind = List.of(t.attacks(), t.bar().meter(), t.bar().length(), t.tempi());
            counted.computeIfAbsent(kind, k -> new HashMap<>()).merge(said, 1, Integer::sum);
            List<Object> neighbours = List.of(kind, b == 0 ? "" : plan.bars().get(b - 1).timeline().attacks(),
                    b + 1 == plan.bars().size() ? "" : plan.bars().get(b + 1).timeline().attacks());
            amongTheSame.computeIfAbsent(neighbours, k -> new HashMap<>()).merge(said, 1, Integer::sum);
        }
        add(counted, alike);
        add(amongTheSame, unforced);
    }

    /** Adds to {@code share} how many of the bars that are alike are counted otherwise than most of them, and how many they are. */
    private static void add(Map<List<Object>, Map<List<Object>, Integer>> counted, int[] share) {
        for (Map<List<Object>, Integer> counts : counted.values()) {
            int all = counts.values().stream().mapToInt(n -> n).sum();
            if (all > 1) {
                share[1] += all;
                share[0] += all - counts.values().stream().mapToInt(n -> n).max().orElse(0);
            }
        }
    }

    private void add(BarTimeline bar, Segment segment) {
        if (before != null && !segment.unit().equals(before.unit())) {
            changes++;
            boolean onBeat = bar.beats().stream().anyMatch(b -> b.start().equals(segment.start()));
            offBeat += onBeat ? 0 : 1;
            slowerInBeat += !onBeat && segment.unit().isLongerThan(before.unit()) && !before.isSpan() && !segment.isSpan() ? 1 : 0;
            Offset now = Offset.at(bar.bar().length().times(bar.bar().index())).plus(segment.start().sinceStart());
            boolean coarser = secondUnit != null && secondUnit.isLongerThan(segment.unit()) && secondUnit.isMultipleOf(segment.unit());
            if (first != null && first.equals(segment.unit()) && coarser && !now.minus(second).isLongerThan(bar.bar().length())) {
                flicker++;
            }
            first = before.unit();
            second = now;
            secondUnit = segment.unit();
        }
        if (segment.rate() > 1.25 * LIMIT) {
            tooFast++;
            Proportion parts = bar.beatAt(segment.start()).length().over(segment.unit());
            tooFastThatHalves += !segment.isSpan() && parts.numerator() % 2 == 0 && parts.isWhole() ? 1 : 0;
        }
        before = segment;
    }
}
