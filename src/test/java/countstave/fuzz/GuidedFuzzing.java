package countstave.fuzz;

import java.io.IOException;

/**
 * Entry point for a coverage-guided fuzzer, which calls it with bytes of its own choice (docs/fuzzing.md). It has the form
 * that such fuzzers look for.
 */
public final class GuidedFuzzing {

    private GuidedFuzzing() {
    }

    /** @throws Throwable whatever is a fault of the program */
    public static void fuzzerTestOneInput(byte[] bytes) throws IOException {
        Examination.of(bytes, bytes.length > 0 && bytes.length % 16 == 0);
    }
}
