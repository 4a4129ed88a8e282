package countstave.practice;

import countstave.count.NoteNames;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Tempo;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * What a player has to know about a passage before the first step, in sentences, the same on every page: from which step
 * on it is counted otherwise, from which on less is said, which tuplets are counted as wholes, and where a breath comes
 * late.
 */
public final class PassageNotes {

    private final Passage passage;
    private final NoteNames names;

    private PassageNotes(Passage passage, NoteNames names) {
        this.passage = passage;
        this.names = names;
    }

    /** @param breath longest stretch of speech that was asked for, in seconds */
    public static List<String> of(Passage passage, BigDecimal breath, NoteNames names) {
        PassageNotes notes = new PassageNotes(passage, names);
        List<String> lines = new ArrayList<>();
        notes.counts(lines);
        notes.takeovers(lines);
        notes.rest(breath, lines);
        return lines;
    }

    /** The same for a page on which the tempo steps say at which of them less is said. */
    public static List<String> besideSteps(Passage passage, BigDecimal breath, NoteNames names) {
        PassageNotes notes = new PassageNotes(passage, names);
        List<String> lines = new ArrayList<>();
        notes.counts(lines);
        notes.rest(breath, lines);
        return lines;
    }

    private void rest(BigDecimal breath, List<String> lines) {
        spans(lines);
        passage.counts().forEach(count -> breaths(count, breath, lines));
        silentBeats(lines);
    }

    /** Where another count begins: the plan of that tempo differs from that of the step before. */
    private void counts(List<String> lines) {
        List<StepCount> counts = passage.counts();
        for (int i = 1; i < counts.size(); i++) {
            StepCount count = counts.get(i);
            boolean lighter = count.isLighterThan(counts.get(i - 1));
            boolean felt = count.hasFelt() && !counts.get(i - 1).hasFelt();
            String sentence = phrase(lighter ? "note.count.lighter" : "note.count.other", differing(count, counts.get(i - 1)),
                    names.tempo(count.from()), String.valueOf(count.number()));
            lines.add(felt ? names.phrase("note.count.felt", sentence) : sentence + ".");
        }
    }

    private static TreeSet<Integer> differing(StepCount count, StepCount before) {
        TreeSet<Integer> bars = new TreeSet<>();
        for (int bar = 0; bar < count.stretch().size(); bar++) {
            if (!count.stretch().counting(bar).equals(before.stretch().counting(bar))) {
                bars.add(bar);
            }
        }
        return bars;
    }

    /** The first step that is too fast for a stage, and the stage that takes its place. */
    private void takeovers(List<String> lines) {
        Stage said = Stage.ALL;
        StringBuilder line = new StringBuilder();
        for (StepCount count : passage.counts()) {
            for (TempoLadder.Rung rung : count.steps()) {
                Stage stage = count.sayableStage(rung);
                if (stage != said) {
                    String tempo = names.tempo(rung.tempo());
                    line.append(stage == Stage.ALL ? names.phrase("note.takeover.again", tempo, String.valueOf(count.number()))
                            : names.phrase(line.isEmpty() ? "note.takeover" : "note.takeover.more", tempo, stage.title(names.phrases())));
                    said = stage;
                }
            }
        }
        if (!line.isEmpty()) {
            lines.add(line.append('.').toString());
        }
    }

    /** The bars with a tuplet that is counted through, for each run of counts that have them in common. */
    private void spans(List<String> lines) {
        TreeSet<Integer> before = new TreeSet<>();
        for (int i = 0; i < passage.counts().size(); i++) {
            StepCount count = passage.counts().get(i);
            TreeSet<Integer> bars = spans(count);
            if (!bars.isEmpty() && !bars.equals(before)) {
                boolean always = i == 0 && passage.counts().stream().allMatch(c -> spans(c).equals(bars));
                lines.add(phrase(always ? "note.tuplet.always" : i == 0 ? "note.tuplet.first" : "note.tuplet.from", bars,
                        names.tempo(count.from())));
            }
            before = bars;
        }
    }

    private static TreeSet<Integer> spans(StepCount count) {
        TreeSet<Integer> bars = new TreeSet<>();
        for (Stretch.Slice slice : count.stretch().slices()) {
            if (slice.segment().isSpan()) {
                bars.add(slice.bar());
            }
        }
        return bars;
    }

    private void breaths(StepCount count, BigDecimal breath, List<String> lines) {
        Exact most = Exact.of(breath);
        TreeSet<Integer> late = new TreeSet<>();
        Exact longest = Exact.ZERO;
        boolean tuplets = true;
        Offset before = Offset.ZERO;
        for (Breath.Mark mark : count.breaths()) {
            Offset here = count.stretch().position(mark.bar(), mark.at());
            if (mark.since().isMoreThan(most)) {
                late.add(mark.at().equals(Offset.ZERO) && mark.bar() > 0 ? mark.bar() - 1 : mark.bar());
                longest = longest.max(mark.since());
                tuplets &= hidesABeat(count.stretch(), before, here);
            }
            before = here;
        }
        Exact rest = sinceLastBreath(count);
        if (rest.isMoreThan(most)) {
            late.add(count.stretch().size() - 1);
            longest = longest.max(rest);
            tuplets &= hidesABeat(count.stretch(), before, count.stretch().end());
        }
        if (!late.isEmpty()) {
            Tempo slowest = count.from();
            lines.add(phrase(tuplets ? "note.breath.tuplet" : "note.breath", late, names.tempo(slowest),
                    names.phrases().decimal(longest.toDouble(), 1)));
        }
    }

    /** Whether between two breaths there is a beat at which one could breathe, were it not inside a tuplet. */
    private static boolean hidesABeat(Stretch stretch, Offset from, Offset to) {
        for (int bar = 0; bar < stretch.size(); bar++) {
            BarTimeline timeline = stretch.timeline(bar);
            for (Beat beat : timeline.beats()) {
                Offset at = stretch.position(bar, beat.start());
                if (timeline.opens(beat) && at.isAfter(from) && at.isBefore(to)
                        && timeline.tuplets().stream().anyMatch(tuplet -> tuplet.hides(beat.start()))) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Up to which tempo there is time to give a beat to a breath, where a mark of the slowest count has it. */
    private void silentBeats(List<String> lines) {
        StepCount count = passage.counts().get(0);
        Clock clock = Clock.of(count.stretch()).faster(passage.speed(count.steps().get(0)));
        Exact most = null;
        for (Breath.Mark mark : count.breaths()) {
            if (mark.beat()) {
                Duration beat = count.stretch().timeline(mark.bar()).beatAt(mark.at()).length();
                Exact tempo = clock.lasting(beat, count.stretch().position(mark.bar(), mark.at()))
                        .over(Breath.SLOW_BEAT).times(Exact.of(count.from().perMinute()));
                most = most == null || tempo.isLessThan(most) ? tempo : most;
            }
        }
        if (most != null) {
            BigDecimal tempo = BigDecimal.valueOf((long) most.toDouble()).min(count.to().perMinute());
            lines.add(names.phrase("note.silent-beat", names.tempo(new Tempo(count.from().unit(), tempo))));
        }
    }

    /** Seconds from the last breath to the end, at the slowest step of a count. */
    private Exact sinceLastBreath(StepCount count) {
        Stretch stretch = count.stretch();
        Clock clock = Clock.of(stretch).faster(passage.speed(count.steps().get(0)));
        Offset last = Offset.ZERO;
        for (Breath.Mark mark : count.breaths()) {
            last = stretch.position(mark.bar(), mark.at());
        }
        return clock.between(last, stretch.end());
    }

    /** A sentence about bars: how many they are comes first, their numbers second. */
    private String phrase(String key, TreeSet<Integer> bars, String... places) {
        List<Object> all = new ArrayList<>(List.of(bars.size(), numbers(bars)));
        all.addAll(List.of(places));
        return names.phrase(key, all.toArray());
    }

    /** {@code 13–15, 18}. */
    private String numbers(TreeSet<Integer> bars) {
        List<String> runs = new ArrayList<>();
        for (int first : bars) {
            if (!bars.contains(first - 1)) {
                int last = first;
                while (bars.contains(last + 1)) {
                    last++;
                }
                runs.add(number(first) + (last == first ? "" : "\u2013" + number(last)));
            }
        }
        return String.join(", ", runs);
    }

    private String number(int bar) {
        return passage.stretch().timeline(bar).bar().number();
    }
}
