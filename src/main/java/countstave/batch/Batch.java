package countstave.batch;

import countstave.files.Console;
import countstave.files.Progress;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.score.NoPartException;
import countstave.score.Warning;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/**
 * Works on many scores at a time and hands their results on in order, so that nothing tells how many threads there were.
 *
 * <p>Few scores are in work or wait for their turn: as many as the memory is likely to hold, by the size of their files. If
 * it does not hold them after all, the score is tried again alone.
 *
 * @param <R> what the work finds out about a score
 */
final class Batch<R> {

    /** Heap that a byte of a score needs while it is worked on; measured at 14 (lyrics) to 40 (charts), docs/many-files.md. */
    private static final int HEAP_PER_BYTE = 40;

    /** A compressed score unpacks to some ten to twenty times its size. */
    private static final int UNPACKED = 16;

    /** Scores that are begun for each thread: those that are done wait for the one before them. */
    private static final int AHEAD = 4;

    private enum State { WAITING, DONE, NO_MEMORY, LEFT_OUT }

    /** A score on its way. */
    private static final class Slot<R> {
        final NamedScore score;
        State state = State.WAITING;
        long held;
        byte[] printed = {};
        byte[] told = {};
        final List<Warning> warnings = new ArrayList<>();
        boolean there;
        boolean withoutPart;
        R result;
        String problem;

        Slot(NamedScore score) {
            this.score = score;
        }
    }

    private final Console console;
    private final ScoreWork<R> work;
    private final int threads;
    private final Progress progress;
    private final boolean verbose;
    private final Deque<Slot<R>> begun = new ArrayDeque<>();
    private final long memory = Runtime.getRuntime().maxMemory() / 10 * 6;
    private long held;
    private int running;
    private int finished;
    private int whole;

    /** @param verbose whether each warning is told in its turn, and not summed up in the tally */
    Batch(Console console, ScoreWork<R> work, int threads, Progress progress, boolean verbose) {
        this.console = console;
        this.work = work;
        this.threads = threads;
        this.progress = progress;
        this.verbose = verbose;
    }

    /** Works on all scores and tells on stderr how that went. */
    Tally run(List<NamedScore> scores) throws IOException {
        Tally tally = new Tally();
        ExecutorService pool = Executors.newFixedThreadPool(Math.min(threads, scores.size()), work -> {
            Thread thread = new Thread(work, "score");
            thread.setDaemon(true);
            return thread;
        });
        int next = 0;
        try {
            for (int turn = 0; turn < scores.size(); turn++) {
                Slot<R> slot;
                while (true) {
                    while (next < scores.size() && begin(scores.get(next), pool)) {
                        next++;
                    }
                    progress.bar(finished(), scores.size(), scores.get(turn).name());
                    slot = awaitTurn();
                    if (slot != null) {
                        break;
                    }
                }
                deliver(slot, tally);
                if (work.results() == null && console.out().checkError()) {
                    // nobody reads the results any more; files are written whether or not anybody reads their names
                    tally.brokenOff = true;
                    break;
                }
            }
        } finally {
            pool.shutdownNow();
            progress.done();
        }
        return tally;
    }

    private synchronized int finished() {
        return finished;
    }

    /** How many scores are done so far, their results in place or ready. */
    synchronized int whole() {
        return whole;
    }

    /** @return whether there was room for one more score */
    private synchronized boolean begin(NamedScore score, ExecutorService pool) {
        long need = need(score);
        if (!begun.isEmpty() && (begun.size() >= threads * AHEAD || held + need > memory
                || begun.stream().anyMatch(other -> other.state == State.NO_MEMORY))) {
            return false;
        }
        Slot<R> slot = new Slot<>(score);
        slot.held = need;
        held += need;
        running++;
        begun.add(slot);
        pool.execute(() -> work(slot));
        return true;
    }

    private static long need(NamedScore score) {
        long bytes = score.size();
        return Math.max(1, score.ending().equals(".mxl") ? bytes * UNPACKED * HEAP_PER_BYTE : bytes * HEAP_PER_BYTE);
    }

    /** Waits until something happens; the first score if its turn has come, else null. */
    private synchronized Slot<R> awaitTurn() {
        Slot<R> first = begun.peek();
        if (first.state == State.WAITING || first.state == State.NO_MEMORY && running > 0) {
            try {
                wait();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException("interrupted", e);
            }
        }
        if (first.state == State.WAITING || first.state == State.NO_MEMORY && running > 0) {
            return null;
        }
        return begun.poll();
    }

    private void work(Slot<R> slot) {
        State end = State.NO_MEMORY;
        try {
            end = attempt(slot);
        } catch (OutOfMemoryError e) {
            slot.result = null;
            slot.printed = new byte[0];
        } finally {
            synchronized (this) {
                held -= slot.held;
                slot.held = slot.printed.length + slot.told.length;
                held += slot.held;
                slot.state = end;
                running--;
                finished++;
                whole += end == State.DONE && slot.problem == null ? 1 : 0;
                notifyAll();
            }
        }
    }

    private State attempt(Slot<R> slot) {
        slot.warnings.clear();
        if (work.isLeftOut(slot.score)) {
            return State.LEFT_OUT;
        }
        slot.there = work.isThere(slot.score);
        if (slot.there) {
            return State.LEFT_OUT;
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Console own = new Console(new ByteArrayInputStream(new byte[0]),
                new PrintStream(out, false, StandardCharsets.UTF_8), new PrintStream(err, false, StandardCharsets.UTF_8),
                verbose ? null : slot.warnings);
        Outcome<State> outcome = Outcome.of(() -> work(slot, own));
        if (outcome.problem() != null) {
            fail(slot, own, outcome.problem());
        } else if (outcome.result() == State.DONE) {
            own.out().flush();
            slot.printed = out.toByteArray();
        }
        own.err().flush();
        slot.told = err.toByteArray();
        return outcome.problem() != null ? State.DONE : outcome.result();
    }

    private State work(Slot<R> slot, Console own) throws IOException {
        ScoreFile file = slot.score.open(own);
        if (slot.score.isDoubtful() && !ScoreReader.isScore(file)) {
            return State.LEFT_OUT;
        }
        try {
            slot.result = work.run(slot.score, file, own);
            return State.DONE;
        } catch (NoPartException e) {
            slot.score.tell(own, e.getMessage());
            slot.withoutPart = true;
            return State.LEFT_OUT;
        } catch (AlreadyThere e) {
            slot.there = true;
            return State.LEFT_OUT;
        }
    }

    private static <R> void fail(Slot<R> slot, Console own, String problem) {
        slot.result = null;
        slot.problem = problem;
        slot.score.tell(own, problem);
    }

    private void deliver(Slot<R> slot, Tally tally) throws IOException {
        if (slot.state == State.NO_MEMORY) {
            slot.state = alone(slot);
        }
        if (slot.told.length > 0 || slot.printed.length > 0 || slot.result != null) {
            progress.done();
        }
        console.err().write(slot.told);
        console.err().flush();
        tally.warnings.add(slot.score.shown(), slot.warnings);
        if (slot.there) {
            tally.there++;
        } else if (slot.state == State.LEFT_OUT) {
            tally.leftOut++;
            tally.withoutPart += slot.withoutPart ? 1 : 0;
        } else {
            work.deliver(slot.score, slot.printed, slot.result, slot.problem, console.out());
            console.out().flush();
            tally.failed += slot.problem != null ? 1 : 0;
            tally.done += slot.problem == null ? 1 : 0;
        }
        synchronized (this) {
            held -= slot.held;
        }
    }

    /** Once more, when nothing else is in work. */
    private State alone(Slot<R> slot) {
        try {
            State end = attempt(slot);
            synchronized (this) {
                whole += end == State.DONE && slot.problem == null ? 1 : 0;
            }
            return end;
        } catch (OutOfMemoryError e) {
            ByteArrayOutputStream err = new ByteArrayOutputStream();
            Console own = new Console(console.in(), console.out(), new PrintStream(err, true, StandardCharsets.UTF_8));
            slot.printed = new byte[0];
            fail(slot, own, Outcome.NO_MEMORY);
            slot.told = err.toByteArray();
            return State.DONE;
        }
    }
}
