package countstave.fuzz;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;

/** A run over many mutants: what came of each, and the totals. */
final class Fuzzing {

    /** Longest time for one file, with everything that is done with it, seconds. */
    private static final long LONGEST = 5;

    /** Every so many files the longer ways are taken too. */
    private static final int PAGES_EVERY = 20;

    private final List<byte[]> seeds;
    private final Mutator mutator;
    private final Map<String, Integer> failures = new LinkedHashMap<>();
    private int counted;
    private int refused;
    private long slowest;

    Fuzzing(List<byte[]> seeds, long seed) {
        this.seeds = seeds;
        this.mutator = new Mutator(seed);
    }

    /** The scores in these folders of at most {@code largest} bytes that are XML texts. */
    static List<byte[]> seeds(int largest, Path... folders) throws IOException {
        List<byte[]> seeds = new ArrayList<>();
        for (Path folder : folders) {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.filter(f -> f.toString().matches(".*\\.(xml|musicxml)")).sorted().toList()) {
                    if (Files.size(file) <= largest) {
                        seeds.add(Files.readAllBytes(file));
                    }
                }
            }
        }
        return seeds;
    }

    /** Examines so many mutants; files that were failed on are kept in {@code keep}. */
    void run(int mutants, Path keep, PrintStream log) throws IOException, InterruptedException {
        ExecutorService worker = Executors.newSingleThreadExecutor(Fuzzing::thread);
        for (int i = 1; i <= mutants; i++) {
            byte[] bytes = mutator.next(seeds);
            boolean pages = i % PAGES_EVERY == 0;
            long start = System.nanoTime();
            Future<Examination.Result> result = worker.submit(() -> Examination.of(bytes, pages));
            try {
                if (result.get(LONGEST, TimeUnit.SECONDS) == Examination.Result.COUNTED) {
                    counted++;
                } else {
                    refused++;
                }
                slowest = Math.max(slowest, System.nanoTime() - start);
            } catch (TimeoutException hang) {
                fail("longer than " + LONGEST + " s", i, bytes, keep);
                worker.shutdownNow();
                worker = Executors.newSingleThreadExecutor(Fuzzing::thread);
            } catch (ExecutionException e) {
                fail(place(e.getCause()), i, bytes, keep);
            }
            if (i % 10_000 == 0) {
                log.println(i + " …");
            }
        }
        worker.shutdownNow();
    }

    private static Thread thread(Runnable work) {
        Thread thread = new Thread(null, work, "examination");
        thread.setDaemon(true);
        return thread;
    }

    /** The fault and where it came from: mutants that fail alike are counted together. */
    private static String place(Throwable fault) {
        StackTraceElement[] trace = fault.getStackTrace();
        StringBuilder place = new StringBuilder(fault.getClass().getSimpleName());
        if (fault instanceof AssertionError) {
            place.append(' ').append(fault.getMessage());
        }
        int told = 0;
        for (int i = 0; i < trace.length && told < 4; i++) {
            if (i < 2 || trace[i].getClassName().startsWith("countstave.")) {
                place.append(" < ").append(trace[i].getClassName().replaceFirst(".*\\.", "")).append('.')
                        .append(trace[i].getMethodName()).append(':').append(trace[i].getLineNumber());
                told++;
            }
        }
        return place.length() > 600 ? place.substring(0, 600) : place.toString();
    }

    private void fail(String what, int number, byte[] bytes, Path keep) throws IOException {
        if (failures.merge(what, 1, Integer::sum) == 1) {
            Files.createDirectories(keep);
            Files.write(keep.resolve("mutant-" + number + ".bin"), bytes);
        }
    }

    Map<String, Integer> failures() {
        return failures;
    }

    /** Totals in a few lines. */
    String totals() {
        StringBuilder text = new StringBuilder(String.format(Locale.ROOT,
                "%d mutants of %d scores: %d counted, %d refused in one line, %d failures of %d kinds; slowest %.2f s%n",
                counted + refused + failures.values().stream().mapToInt(n -> n).sum(), seeds.size(), counted, refused,
                failures.values().stream().mapToInt(n -> n).sum(), failures.size(), slowest / 1e9));
        failures.forEach((what, times) -> text.append(String.format("  %5d × %s%n", times, what)));
        return text.toString();
    }
}
