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
import countstave.text.TextOptions;
import countstave.text.TextWriter;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.audiveris.proxymusic.util.Marshalling;
import org.junit.jupiter.api.Test;

/**
 * Notes a second over parts of growing length, and each step against ProxyMusic alone on the same file in the same
 * process: {@code mvn -q test -Dtest=ThroughputBenchmark}. Every figure is the median of several turns after a million
 * unmeasured notes, because the compiler is at work for some seconds.
 */
class ThroughputBenchmark {

    private static final int[] NOTES = {1_000, 10_000, 50_000, 100_000, 1_000_000};

    /** Notes counted before the first measured turn: until then the compiler is at work. */
    private static final int WARM_UP = 1_000_000;

    /** Beyond this many notes ProxyMusic's objects need more memory than there is beside ours. */
    private static final int LARGEST_BOUND = 1_000_000;

    private static final List<String> STEPS = List.of("ProxyMusic", "read", "timeline", "plan", "words", "text", "annotate");

    /** In a process of its own, with memory for the longest part. */
    @Test
    void steps() throws IOException, InterruptedException {
        Process process = java("-Xmx6g", ThroughputBenchmark.class.getName()).redirectErrorStream(true).start();
        process.inputReader(StandardCharsets.UTF_8).lines().forEach(System.out::println);
        assertEquals(0, process.waitFor());
    }

    /** Whole runs of {@code count} in 1 GiB, until a score is too large. */
    @Test
    void largest() throws IOException, InterruptedException {
        Path file = Files.createTempFile("largest", ".musicxml");
        try {
            int code = 0;
            for (int notes = 500_000; code == 0 && notes <= 4_000_000; notes += 500_000) {
                Files.writeString(file, part(notes));
                long start = System.nanoTime();
                code = java("-Xmx1g", "countstave.Main", "count", file.toString())
                        .inheritIO().redirectOutput(ProcessBuilder.Redirect.DISCARD).start().waitFor();
                System.out.printf(Locale.ROOT, "count in 1 GiB, %d notes (%d MB): exit %d, %.1f s%n", notes,
                        Files.size(file) / 1_000_000, code, (System.nanoTime() - start) / 1e9);
            }
        } finally {
            Files.delete(file);
        }
    }

    /** A process of this one's class path. */
    static ProcessBuilder java(String... arguments) {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"))));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command);
    }

    public static void main(String[] args) throws Exception {
        System.out.println("   notes | " + String.join(" | ", STEPS) + " | notes/s | count / ProxyMusic"
                + " | annotate / ProxyMusic | plan / count");
        byte[] small = part(10_000).getBytes(StandardCharsets.UTF_8);
        for (int done = 0; done < WARM_UP; done += 10_000) {
            run(small, 10_000);
        }
        for (int notes : NOTES) {
            byte[] bytes = part(notes).getBytes(StandardCharsets.UTF_8);
            int turns = notes < 100_000 ? 9 : notes < 1_000_000 ? 7 : 3;
            List<long[]> measured = new ArrayList<>();
            for (int i = 0; i < turns; i++) {
                measured.add(run(bytes, notes));
            }
            tell(notes, measured);
        }
    }

    private static void tell(int notes, List<long[]> measured) {
        double[] ms = new double[STEPS.size()];
        for (int step = 0; step < ms.length; step++) {
            int at = step;
            ms[step] = measured.stream().mapToDouble(t -> (t[at + 1] - t[at]) / 1e6).sorted().toArray()[measured.size() / 2];
        }
        double plan = ms[1] + ms[2] + ms[3] + ms[4];
        double count = plan + ms[5];
        StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%8d", notes));
        for (double step : ms) {
            line.append(String.format(Locale.ROOT, " | %5.1f ms", step));
        }
        System.out.printf(Locale.ROOT, "%s | %7.0f | %.2f | %.2f | %.3f%n", line, notes / (count / 1e3), count / ms[0],
                (plan + ms[6]) / ms[0], ms[3] / count);
    }

    /** Clock readings before the first step and after each. */
    private static long[] run(byte[] bytes, int notes) throws Exception {
        long[] at = new long[STEPS.size() + 1];
        at[0] = System.nanoTime();
        if (notes <= LARGEST_BOUND) {
            Marshalling.unmarshal(new ByteArrayInputStream(bytes));
        }
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
        StringBuilder text = new StringBuilder();
        new TextWriter(text, TextOptions.DEFAULT).part(counts);
        at[6] = System.nanoTime();
        text = null;
        file.write(Annotator.annotate(file.text(), List.of(counts), Selection.ALL, Unplayed.NEEDED), false,
                OutputStream.nullOutputStream());
        at[7] = System.nanoTime();
        assertEquals(bars(notes), counts.bars().size());
        return at;
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
