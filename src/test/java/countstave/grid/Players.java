package countstave.grid;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import countstave.musicxml.OwnMarks;
import countstave.musicxml.ReadOptions;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Part;
import countstave.score.PartTimeline;
import countstave.score.PulseChoice;
import countstave.score.Score;
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
import java.util.Map;

/**
 * Bars with the counts that trained readers accept for them, in the music where they stand: the list and what it means are
 * described beside it ({@code ../shared/players}).
 */
final class Players {

    static final Path FOLDER = Corpus.SHARED.resolve("players");

    /**
     * Some bars of one part.
     *
     * @param timeline the part, or what of it stands around the bars
     * @param first index in the part of the timeline's first bar
     * @param accepted accepted counts by index of the bar in the part
     */
    record Passage(String score, PartTimeline timeline, int first, Map<Integer, List<String>> accepted) {

        /** The bars of the list with this number of bars around them: enough for a plan, and faster. */
        Passage near(int around) {
            int from = Math.max(0, accepted.keySet().stream().mapToInt(i -> i).min().orElse(0) - around);
            int to = Math.min(timeline.bars().size(), accepted.keySet().stream().mapToInt(i -> i).max().orElse(0) + around + 1);
            return new Passage(score, timeline.withBars(timeline.bars().subList(from, to)), from, accepted);
        }

        int size() {
            return accepted.size();
        }

        /** The bars whose count is not accepted, with what is said and what would be. */
        List<String> differing(PlanOptions options) {
            PartPlan plan = Planner.plan(timeline, options);
            List<String> lines = new ArrayList<>();
            accepted.forEach((index, counts) -> {
                BarPlan bar = plan.bars().get(index - first);
                String said = said(bar);
                if (!counts.contains(said)) {
                    lines.add(score + " bar " + bar.timeline().bar().number() + " (" + index + "): " + said
                            + "   accepted: " + String.join(" | ", counts));
                }
            });
            return lines;
        }
    }

    private Players() {
    }

    static boolean present() {
        return Files.isRegularFile(FOLDER.resolve("bars.json"));
    }

    /** All passages of a list. */
    static List<Passage> of(Path list) throws IOException {
        List<Passage> passages = new ArrayList<>();
        Map<String, Score> scores = new HashMap<>();
        for (JsonNode entry : new ObjectMapper().readTree(list.toFile())) {
            String name = entry.get("score").asText();
            Path file = FOLDER.resolveSibling(name);
            if (!scores.containsKey(name)) {
                ScoreFile read = ScoreFile.of(file.getFileName().toString(), Files.readAllBytes(file));
                scores.put(name, ScoreReader.read((read.text().contains("countstave") ? read.withText(OwnMarks.strip(read.text())) : read), ReadOptions.DEFAULT));
            }
            Part part = scores.get(name).parts().stream().filter(p -> p.id().equals(entry.get("part").asText()))
                    .findFirst().orElseThrow();
            Map<Integer, List<String>> accepted = new java.util.TreeMap<>();
            for (JsonNode bar : entry.get("bars")) {
                List<String> counts = new ArrayList<>();
                bar.get("accepted").forEach(c -> counts.add(c.asText()));
                accepted.put(bar.get("index").asInt(), counts);
            }
            passages.add(new Passage(name, Timeline.of(part, Selection.ALL, PulseChoice.BY_METER, null), 0, accepted));
        }
        return passages;
    }

    /** What is said in a bar, as the list writes it: {@code position:say}, say being syllables a beat or {@code (n:k)}. */
    static String said(BarPlan bar) {
        List<String> out = new ArrayList<>();
        String last = null;
        for (Segment segment : bar.segments()) {
            BarTimeline timeline = bar.timeline();
            Beat beat = timeline.beatAt(segment.start());
            Offset start = beat.start().isBefore(Offset.ZERO) ? Offset.ZERO : beat.start();
            Offset end = beat.end().isAfter(timeline.bar().end()) ? timeline.bar().end() : beat.end();
            Duration here = end.minus(start);
            Proportion into = segment.start().minus(start).over(here);
            int number = 1;
            for (Beat other : timeline.beats()) {
                number += other.start().isBefore(beat.start()) ? 1 : 0;
            }
            Duration length = segment.isSpan() && timeline.beats().size() > 1
                    ? timeline.beats().get(1).start().minus(timeline.beats().get(0).start()) : here;
            String say = segment.isSpan() ? "(" + segment.positions() + ":"
                    + segment.end().minus(segment.start()).over(length) + ")" : length.over(segment.unit()).toString();
            if (say.equals(last) && !segment.isSpan()) {
                continue;
            }
            out.add(number + (into.isZero() ? "" : "+" + into) + ":" + say);
            last = say;
        }
        return String.join(" ", out);
    }
}
