package countstave.practice;

import countstave.count.NoteNames;
import countstave.score.Bar;
import countstave.score.Tempo;
import countstave.time.Exact;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What a player has to know about a passage before the first step, in sentences, the same on every page: from which step
 * on less is said, which tuplets are counted as wholes, and where a breath comes late.
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
        notes.takeovers(lines);
        notes.spans(lines);
        notes.breaths(breath, lines);
        return lines;
    }

    /** The first step that is too fast for a stage, and the stage that takes its place. */
    private void takeovers(List<String> lines) {
        Stage said = Stage.ALL;
        StringBuilder line = new StringBuilder();
        for (TempoLadder.Rung rung : passage.ladder()) {
            Stage stage = passage.sayableStage(rung);
            if (stage != said) {
                String from = names.tempo(rung.tempo()) + " on ";
                String number = "stage " + (stage.ordinal() + 1);
                line.append(line.isEmpty()
                        ? "From " + from + "it is too fast to be said in full: " + number + " takes over"
                        : "; from " + from + number);
                said = stage;
            }
        }
        if (!line.isEmpty()) {
            lines.add(line.append('.').toString());
        }
    }

    private void spans(List<String> lines) {
        TreeSet<Integer> bars = new TreeSet<>();
        for (Stretch.Slice slice : passage.stretch().slices()) {
            if (slice.segment().isSpan()) {
                bars.add(slice.bar());
            }
        }
        if (!bars.isEmpty()) {
            lines.add(bars(bars) + (bars.size() == 1 ? " holds" : " hold") + " a tuplet that is counted through as one,"
                    + " at every step alike; the beats inside it are in the click.");
        }
    }

    private void breaths(BigDecimal breath, List<String> lines) {
        Exact most = Exact.of(breath);
        TreeSet<Integer> late = new TreeSet<>();
        Exact longest = Exact.ZERO;
        for (Breath.Mark mark : passage.breaths()) {
            if (mark.since().isMoreThan(most)) {
                late.add(mark.at().equals(Offset.ZERO) && mark.bar() > 0 ? mark.bar() - 1 : mark.bar());
                longest = longest.max(mark.since());
            }
        }
        Exact rest = sinceLastBreath();
        if (rest.isMoreThan(most)) {
            late.add(passage.stretch().size() - 1);
            longest = longest.max(rest);
        }
        if (!late.isEmpty()) {
            Tempo slowest = passage.ladder().get(0).tempo();
            lines.add(String.format(Locale.ROOT, "At %s a breath has to last %.1f s (%s): a tuplet is not interrupted.",
                    names.tempo(slowest), longest.toDouble(), lower(bars(late))));
        }
    }

    /** Seconds from the last breath to the end, at the slowest step. */
    private Exact sinceLastBreath() {
        Stretch stretch = passage.stretch();
        Clock clock = Clock.of(stretch).faster(passage.speed(passage.ladder().get(0)));
        Offset last = Offset.ZERO;
        for (Breath.Mark mark : passage.breaths()) {
            last = stretch.position(mark.bar(), mark.at());
        }
        return clock.between(last, stretch.end());
    }

    private String bars(TreeSet<Integer> bars) {
        return (bars.size() == 1 ? "Bar " : "Bars ") + bars.stream().map(b -> passage.stretch().timeline(b).bar())
                .map(Bar::number).collect(Collectors.joining(", "));
    }

    private static String lower(String bars) {
        return bars.substring(0, 1).toLowerCase(Locale.ROOT) + bars.substring(1);
    }
}
