package countstave.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.files.Console;
import countstave.files.Progress;
import countstave.musicxml.ScoreFile;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Order, limits and second tries of work on many scores, with work made up for the purpose. */
@Timeout(60)
class BatchTest {

    private static final int SCORES = 60;

    @TempDir
    Path folder;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();
    private final List<NamedScore> scores = new ArrayList<>();
    private Batch<Void> batch;

    @BeforeEach
    void files() throws IOException {
        for (int i = 0; i < SCORES; i++) {
            Path file = Files.writeString(folder.resolve(i + ".musicxml"), "<score-partwise/>");
            scores.add(new NamedScore(Integer.toString(i), file, file.getFileName(), true, null));
        }
    }

    private Tally run(int threads, ScoreWork<Void> work, OutputStream to) throws IOException {
        Console console = new Console(new ByteArrayInputStream(new byte[0]),
                new PrintStream(to, false, StandardCharsets.UTF_8), new PrintStream(err, true, StandardCharsets.UTF_8));
        batch = new Batch<>(console, work, threads, new Progress(console.err(), false), true);
        return batch.run(scores);
    }

    private static String inOrder() {
        return IntStream.range(0, SCORES).mapToObj(i -> i + ".").collect(Collectors.joining());
    }

    private static void pause(int millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The first score takes longest; the others wait for it, and no more of them are begun than may wait. */
    @Test
    void resultsComeInOrderAndFewWait() throws IOException {
        AtomicInteger begun = new AtomicInteger();
        AtomicInteger beforeFirst = new AtomicInteger();
        Tally tally = run(4, (score, file, console) -> {
            begun.incrementAndGet();
            if (score.name().equals("0")) {
                pause(500);
                beforeFirst.set(begun.get());
            }
            console.out().print(score.name() + ".");
            return null;
        }, out);
        assertEquals(inOrder(), out.toString(StandardCharsets.UTF_8));
        assertEquals("60 scores done", tally.summary(SCORES));
        assertTrue(beforeFirst.get() > 4 && beforeFirst.get() <= 16, beforeFirst + " begun while the first was in work");
    }

    @Test
    void whatDoesNotFitBesideTheOthersIsTriedAlone() throws IOException {
        AtomicInteger inWork = new AtomicInteger();
        Map<String, Integer> tries = new ConcurrentHashMap<>();
        Tally tally = run(4, (score, file, console) -> {
            int beside = inWork.incrementAndGet();
            try {
                int number = Integer.parseInt(score.name());
                int tried = tries.merge(score.name(), 1, Integer::sum);
                pause(2);
                if (number % 7 == 3 && tried == 1 || number == 50) {
                    console.out().print("half of ");
                    throw new OutOfMemoryError("as if");
                }
                if (tried == 2) {
                    assertEquals(1, beside, "in work besides " + number);
                }
                console.out().print(score.name() + ".");
                return null;
            } finally {
                inWork.decrementAndGet();
            }
        }, out);
        assertEquals(inOrder().replace("50.", ""), out.toString(StandardCharsets.UTF_8));
        assertEquals("59 scores done, 1 failed", tally.summary(SCORES));
        assertEquals(59, batch.whole(), "what an interrupted run says is done");
        assertEquals("countstave: 50: " + Outcome.NO_MEMORY + "\n", err.toString(StandardCharsets.UTF_8).replace("\r", ""));
        assertEquals(2, tries.get("3"));
        assertEquals(1, tries.get("4"));
    }

    /** A fault of our own in one score is told in one line, and is no fault of the next. */
    @Test
    void faultsStayWithTheirScore() throws IOException {
        Tally tally = run(3, (score, file, console) -> {
            console.tell("looks at " + score.name());
            if (score.name().endsWith("9")) {
                throw new IllegalStateException("no\nsuch bar");
            }
            return null;
        }, out);
        assertEquals("54 scores done, 6 failed", tally.summary(SCORES));
        List<String> lines = err.toString(StandardCharsets.UTF_8).lines().toList();
        assertEquals(66, lines.size());
        assertEquals("countstave: looks at 9", lines.get(9));
        assertTrue(lines.get(10).startsWith("countstave: 9: a fault of countstave itself (IllegalStateException: no\uFFFDsuch"),
                lines.get(10));
        assertEquals("countstave: looks at 10", lines.get(11));
    }

    /** Nobody reads any more: the rest is not worked on. */
    @Test
    void stopsWhenTheReaderGoesAway() throws IOException {
        AtomicInteger begun = new AtomicInteger();
        OutputStream closed = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("Broken pipe");
            }
        };
        Tally tally = run(1, new ScoreWork<>() {
            @Override
            public Void run(NamedScore score, ScoreFile file, Console console) {
                begun.incrementAndGet();
                pause(5);
                console.out().print(score.name());
                return null;
            }
        }, closed);
        assertTrue(tally.brokenOff);
        assertTrue(begun.get() < SCORES, begun + " begun");
    }
}
