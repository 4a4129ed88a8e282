package countstave.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.count.Unplayed;
import countstave.count.Words;
import countstave.grid.PartPlan;
import countstave.grid.PlanOptions;
import countstave.grid.Planner;
import countstave.musicxml.Annotator;
import countstave.musicxml.ReadOptions;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.score.PartTimeline;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.Selection;
import countstave.score.Timeline;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import org.audiveris.proxymusic.util.Marshalling;
import org.junit.jupiter.api.Test;

/**
 * Notes a second over parts of growing length, and each step against ProxyMusic alone on the same file in the same
 * process: {@code mvn -q test -Dtest=ThroughputBenchmark}.
 */
class ThroughputBenchmark {

    private static final int[] NOTES = {1_000, 10_000, 50_000, 100_000};

    @Test
    void steps() throws Exception {
        for (int i = 0; i < 5; i++) {
            run(5_000, false);
        }
        System.out.println("   notes | ProxyMusic |   read | timeline |  plan | words | annotate | notes/s | count / ProxyMusic"
                + " | plan / count");
        for (int notes : NOTES) {
            run(notes, true);
        }
    }

    private static void run(int notes, boolean told) throws Exception {
        byte[] bytes = part(notes).getBytes(StandardCharsets.UTF_8);
        System.gc();
        long[] at = new long[7];
        at[0] = System.nanoTime();
        Marshalling.unmarshal(new ByteArrayInputStream(bytes));
        at[1] = System.nanoTime();
        ScoreFile file = ScoreFile.of("bench.musicxml", bytes);
        Score score = ScoreReader.read(file, ReadOptions.DEFAULT);
        at[2] = System.nanoTime();
        PartTimeline timeline = Timeline.of(score.parts().get(0), Selection.ALL, PulseChoice.BY_METER, null);
        at[3] = System.nanoTime();
        PartPlan plan = Planner.plan(timeline, PlanOptions.DEFAULT);
        at[4] = System.nanoTime();
        PartCounts counts = Words.of(plan, CountingSystem.named(CountingSystem.NUMBERS));
        at[5] = System.nanoTime();
        Annotator.annotate(file.text(), List.of(counts), Selection.ALL, Unplayed.NEEDED);
        at[6] = System.nanoTime();
        assertEquals(bars(notes), counts.bars().size());
        if (told) {
            double base = at[1] - at[0];
            double count = at[5] - at[1];
            System.out.printf(Locale.ROOT, "%8d | %7.0f ms | %3.0f ms | %5.0f ms | %2.0f ms | %2.0f ms | %5.0f ms"
                    + " | %7.0f | %.2f | %.2f%n", notes, base / 1e6, ms(at, 2), ms(at, 3), ms(at, 4), ms(at, 5), ms(at, 6),
                    notes / (count / 1e9), count / base, (at[4] - at[3]) / count);
        }
    }

    private static double ms(long[] at, int step) {
        return (at[step] - at[step - 1]) / 1e6;
    }

    private static int bars(int notes) {
        return notes / 10;
    }

    /** Bars of 4/4, ten notes each: four sixteenths, a triplet, two eighths, a quarter, in turning order of beats. */
    static String part(int notes) {
        StringBuilder xml = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<score-partwise version=\"4.0\">"
                + "<part-list><score-part id=\"P1\"><part-name>Drums</part-name></score-part></part-list>\n<part id=\"P1\">\n");
        for (int bar = 0; bar < bars(notes); bar++) {
            xml.append("<measure number=\"").append(bar + 1).append("\">\n");
            if (bar == 0) {
                xml.append("<attributes><divisions>12</divisions><time><beats>4</beats><beat-type>4</beat-type></time>"
                        + "</attributes>\n");
            }
            for (int beat = 0; beat < 4; beat++) {
                switch ((beat + bar) % 4) {
                    case 0 -> notes(xml, 4, 3, "16th", "");
                    case 1 -> notes(xml, 3, 4, "eighth", "<time-modification><actual-notes>3</actual-notes>"
                            + "<normal-notes>2</normal-notes></time-modification>");
                    case 2 -> notes(xml, 2, 6, "eighth", "");
                    default -> notes(xml, 1, 12, "quarter", "");
                }
            }
            xml.append("</measure>\n");
        }
        return xml.append("</part>\n</score-partwise>\n").toString();
    }

    private static void notes(StringBuilder xml, int count, int duration, String type, String tuplet) {
        for (int i = 0; i < count; i++) {
            xml.append("<note><pitch><step>C</step><octave>5</octave></pitch><duration>").append(duration)
                    .append("</duration><voice>1</voice><type>").append(type).append("</type>").append(tuplet)
                    .append("</note>\n");
        }
    }
}
