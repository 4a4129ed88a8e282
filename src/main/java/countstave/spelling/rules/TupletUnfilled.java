package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.NoteValue;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Bracket;
import countstave.spelling.Findings;
import countstave.spelling.LengthWords;
import countstave.spelling.PartView;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Ratio;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** {@code tuplet-unfilled}. */
final class TupletUnfilled extends BaseRule {

    TupletUnfilled() {
        super(new RuleInfo("tuplet-unfilled", Severity.ERROR,
                "What stands in a tuplet does not add up to the number it says.",
                "The rest of the bar then falls between the beats.",
                "Add the notes or rests that the tuplet lacks, or take its number off.",
                "a triplet of two eighths, followed by a plain eighth",
                "a triplet of a quarter and an eighth: three eighths in all",
                Sources.MUSICXML + ", elements time-modification and tuplet; textbooks on tuplets"));
    }

    @Override
    public void check(PartView part, Findings findings) {
        Set<Event> bracketed = java.util.Collections.newSetFromMap(new java.util.IdentityHashMap<>());
        List<Bracket> brackets = Bracket.of(part);
        for (Bracket bracket : brackets) {
            if (bracket.isMatched()) {
                bracketed.addAll(bracket.events());
            }
            // notes that lack the product of the ratios around them are another rule's business
            if (brackets.stream().noneMatch(b -> b.isInside(bracket) && TupletNesting.contradiction(b) != null)) {
                check(bracket, findings);
            }
        }
        for (BarView bar : part.bars()) {
            for (Voice voice : bar.bar().voices()) {
                unbracketed(bar, voice, bracketed, findings);
            }
        }
    }

    private static void check(Bracket bracket, Findings findings) {
        List<Event> events = bracket.events();
        if (!bracket.isMatched() || bracket.outer() != null || !events.stream().allMatch(TupletUnfilled::isRegular)) {
            return;
        }
        // a number that is not the notes' own is another rule's business
        Ratio own = common(events);
        Ratio ratio = own != null ? own : bracket.start().shownRatio();
        if (ratio == null || ratio.isPlain()) {
            return;
        }
        Duration length = events.stream().map(Event::length).reduce(Duration.ZERO, Duration::plus);
        Duration written = ratio.undo(length);
        if (!isFilled(written, ratio)) {
            findings.add(bracket.bar(), bracket.voice(), events.get(0), p -> p.text("found.unfilled", ratio.toString(),
                    LengthWords.of(written, p), String.valueOf(ratio.actual())), null);
        }
    }

    /** Whether {@code written} is {@code actual} times a note value, plain or dotted. */
    private static boolean isFilled(Duration written, Ratio ratio) {
        Duration unit = written.dividedBy(ratio.actual());
        return NoteValue.ofLength(unit) != null || NoteValue.ofLength(unit.times(2, 3)) != null;
    }

    private static boolean isRegular(Event event) {
        return event.written() != null && event.written().length().equals(event.length())
                && !event.isSharedTremolo();
    }

    /** The ratio of the group where all its notes have the same; null where an inner group hides it. */
    private static Ratio common(List<Event> events) {
        Set<Ratio> ratios = new HashSet<>();
        events.forEach(e -> ratios.add(e.written().ratio()));
        return ratios.size() == 1 ? ratios.iterator().next() : null;
    }

    /** Runs of one ratio without brackets: they must lead from a plain position to a plain one. */
    private static void unbracketed(BarView bar, Voice voice, Set<Event> bracketed, Findings findings) {
        List<Event> run = new ArrayList<>();
        for (Event event : BarView.timed(voice)) {
            boolean inTuplet = isRegular(event) && !event.written().ratio().isPlain();
            // a bracket over a part of the run only may stand in the wrong place, but what it leaves out still counts
            boolean parts = !run.isEmpty() && inTuplet && (bracketed.contains(event) || bracketed.contains(last(run)))
                    && !event.written().ratio().equals(last(run).written().ratio());
            if (!inTuplet || parts) {
                tell(bar, voice, run, bracketed, findings);
                run.clear();
            }
            if (inTuplet) {
                run.add(event);
            }
        }
        tell(bar, voice, run, bracketed, findings);
    }

    private static Event last(List<Event> run) {
        return run.get(run.size() - 1);
    }

    private static void tell(BarView bar, Voice voice, List<Event> run, Set<Event> bracketed, Findings findings) {
        if (bracketed.containsAll(run)) {
            return;
        }
        Offset start = run.get(0).start();
        Offset end = last(run).end();
        boolean atBarline = start.equals(Offset.ZERO) && run.get(0).tupletMarks().isEmpty() && bar.bar().index() > 0
                && end.equals(bar.bar().end());
        if (bar.frame().isPlain(start) && !bar.frame().isPlain(end) && !atBarline) {
            Event first = run.get(0);
            Duration length = end.minus(start);
            findings.add(bar, voice.name(), first, p -> p.text("found.unfilled.run", first.written().ratio().toString(),
                    LengthWords.of(length, p)), null);
        }
    }
}
