package countstave;

import countstave.count.PartCounts;
import countstave.count.Words;
import countstave.grid.Planner;
import countstave.musicxml.OwnMarks;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.score.Fact;
import countstave.score.Part;
import countstave.score.PartTimeline;
import countstave.score.Score;
import countstave.score.ScoreException;
import countstave.score.Timeline;
import countstave.score.Warning;
import countstave.spelling.FactWords;
import countstave.time.TimeOverflowException;
import java.util.ArrayList;
import java.util.List;

/**
 * A score with its counts: the whole way from the file to the words.
 *
 * @param file the file, without countstave's own annotations
 * @param score what it says
 * @param parts the counts of the chosen parts
 */
public record CountedScore(ScoreFile file, Score score, List<PartCounts> parts) {

    /**
     * Read, timeline, plan, words.
     *
     * @throws ScoreException if the score cannot be read or counted, or does not have what is asked for
     */
    public static CountedScore of(ScoreFile source, CountingOptions options) {
        ScoreFile file = source.withText(OwnMarks.strip(source.text()));
        Score score = ScoreReader.read(file, options.reading());
        List<PartCounts> parts = new ArrayList<>();
        List<Part> chosen = options.parts().of(score);
        options.selection().requireIn(chosen);
        for (Part part : chosen) {
            parts.add(count(part, options));
        }
        return new CountedScore(file, score, List.copyOf(parts));
    }

    /** The parts that play in the bars that are counted; all where none does. */
    public List<PartCounts> playing() {
        List<PartCounts> playing = parts.stream().filter(PartCounts::hasAttacks).toList();
        return playing.isEmpty() ? parts : playing;
    }

    private static PartCounts count(Part part, CountingOptions options) {
        try {
            PartTimeline all = Timeline.of(part, options.selection(), options.time());
            PartTimeline timeline = options.bars().of(all);
            return Words.of(Planner.plan(timeline, options.plan()), options.system());
        } catch (TimeOverflowException e) {
            throw new ScoreException("part " + part.name() + ": " + e.getMessage()
                    + "; check its durations and divisions", e);
        }
    }

    /** What the user is told while the score is still counted: bars that do not add up, an assumed tempo. */
    public List<Warning> warnings() {
        List<Warning> lines = new ArrayList<>();
        List<Fact.Hidden> hidden = new ArrayList<>();
        String firstHidden = null;
        for (PartCounts counted : parts) {
            Part part = counted.part();
            for (Fact fact : score.facts()) {
                if (!fact.place().partId().equals(part.id())) {
                    continue;
                }
                String place = "part " + part.name() + ", bar "
                        + part.bars().get(fact.place().barIndex()).called();
                if (fact instanceof Fact.Hidden notes) {
                    hidden.add(notes);
                    firstHidden = firstHidden == null ? place : firstHidden;
                }
                String warning = FactWords.warning(fact);
                if (warning != null) {
                    lines.add(new Warning(place + ": " + warning, FactWords.kind(fact)));
                }
            }
        }
        if (!hidden.isEmpty()) {
            lines.add(new Warning(FactWords.hidden(hidden, firstHidden), FactWords.kind(hidden.get(0))));
        }
        if (parts.stream().anyMatch(p -> p.timeline().tempoAssumed())) {
            lines.add(new Warning("no tempo in the score: a quarter = 90 is assumed; --tempo sets another",
                    "no tempo in " + Warning.SCORES + ": a quarter = 90 is assumed; --tempo sets another"));
        }
        return lines;
    }
}
