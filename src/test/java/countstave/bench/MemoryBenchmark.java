package countstave.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.count.CountingSystem;
import countstave.count.Words;
import countstave.grid.PlanOptions;
import countstave.grid.Planner;
import countstave.musicxml.ReadOptions;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.Selection;
import countstave.score.Timeline;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.lang.ref.Reference;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.audiveris.proxymusic.util.Marshalling;
import org.junit.jupiter.api.Test;

/**
 * Memory that is held once a part has been counted, against what ProxyMusic's objects for the same part hold:
 * {@code mvn -q test -Dtest=MemoryBenchmark}. Every figure comes from a process of its own, because the binding keeps what it
 * has bound last.
 */
class MemoryBenchmark {

    private static final int[] NOTES = {10_000, 50_000, 100_000};

    @Test
    void held() throws IOException, InterruptedException {
        for (int notes : NOTES) {
            double theirs = bytes("theirs", notes);
            double ours = bytes("ours", notes);
            System.out.printf(Locale.ROOT, "%7d notes: ProxyMusic's objects %.1f MB, a counted part %.1f MB, %.2f x%n",
                    notes, theirs / 1e6, ours / 1e6, ours / theirs);
        }
    }

    /** The smallest heap in which a whole run gets through: the baseline of {@link StartUpBenchmark}, count and annotate. */
    @Test
    void smallestHeap() throws IOException, InterruptedException {
        Path score = Files.createTempFile("heap", ".musicxml");
        Path annotated = Files.createTempFile("annotated", ".musicxml");
        try {
            Files.writeString(score, ThroughputBenchmark.part(50_000));
            int theirs = smallest(Baseline.class.getName(), score.toString());
            int count = smallest("countstave.Main", "count", score.toString());
            int annotate = smallest("countstave.Main", "annotate", score.toString(), "-o", annotated.toString(), "--force");
            System.out.printf(Locale.ROOT, "smallest heap for 50,000 notes: ProxyMusic alone %d MB, count %d MB, %.2f x,"
                    + " annotate %d MB, %.2f x%n", theirs, count, (double) count / theirs, annotate,
                    (double) annotate / theirs);
        } finally {
            Files.delete(score);
            Files.delete(annotated);
        }
    }

    /** In MB, to 2 MB. */
    private static int smallest(String... run) throws IOException, InterruptedException {
        int tooSmall = 4;
        int enough = 1024;
        while (enough - tooSmall > 2) {
            int between = (tooSmall + enough) / 2;
            List<String> arguments = new ArrayList<>(List.of("-Xmx" + between + "m"));
            arguments.addAll(List.of(run));
            int code = ThroughputBenchmark.java(arguments.toArray(new String[0]))
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD).redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start().waitFor();
            if (code == 0) {
                enough = between;
            } else {
                tooSmall = between;
            }
        }
        return enough;
    }

    private static long bytes(String whose, int notes) throws IOException, InterruptedException {
        Process process = ThroughputBenchmark.java("-Xmx4g", MemoryBenchmark.class.getName(), whose,
                Integer.toString(notes)).redirectError(ProcessBuilder.Redirect.INHERIT).start();
        String told = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        assertEquals(0, process.waitFor());
        return Long.parseLong(told);
    }

    public static void main(String[] args) throws Exception {
        byte[] few = ThroughputBenchmark.part(100).getBytes(StandardCharsets.UTF_8);
        byte[] bytes = ThroughputBenchmark.part(Integer.parseInt(args[1])).getBytes(StandardCharsets.UTF_8);
        boolean ours = args[0].equals("ours");
        // the program's own tables and the binding are there before and do not count
        Object first = ours ? counted(few) : bound(few);
        long before = used();
        Object held = ours ? counted(bytes) : bound(bytes);
        System.out.println(used() - before);
        Reference.reachabilityFence(first);
        Reference.reachabilityFence(held);
        Reference.reachabilityFence(bytes);
    }

    private static Object bound(byte[] bytes) throws Exception {
        return Marshalling.unmarshal(new ByteArrayInputStream(bytes));
    }

    /** All that {@code count} holds when it begins to print: the text, the score, the plan and the words. */
    private static Object counted(byte[] bytes) throws IOException {
        ScoreFile file = ScoreFile.of("bench.musicxml", bytes);
        Score score = ScoreReader.read(file, ReadOptions.DEFAULT);
        return List.of(file, score, Words.of(Planner.plan(
                Timeline.of(score.parts().get(0), Selection.ALL, PulseChoice.BY_METER, null), PlanOptions.DEFAULT),
                CountingSystem.named(CountingSystem.NUMBERS)));
    }

    private static long used() {
        for (int i = 0; i < 3; i++) {
            System.gc();
        }
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }
}
