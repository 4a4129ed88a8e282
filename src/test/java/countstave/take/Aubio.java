package countstave.take;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** An onset detector that others have written, run as a program where it is installed (Debian's {@code aubio-tools}). */
final class Aubio {

    static final String MISSING = "needs aubioonset (Debian's aubio-tools), which is not installed";

    private Aubio() {
    }

    static boolean isThere(String program) {
        String path = System.getenv("PATH");
        for (String folder : (path == null ? "" : path).split(java.io.File.pathSeparator)) {
            if (!folder.isEmpty() && Files.isExecutable(Path.of(folder, program))) {
                return true;
            }
        }
        return false;
    }

    static boolean isPossible() {
        return isThere("aubioonset");
    }

    static List<Double> onsets(Path wav) throws IOException {
        Path out = Files.createTempFile(wav.getParent(), "onsets", ".txt");
        try {
            Process process = new ProcessBuilder("aubioonset", "-i", wav.toString(), "-H", "256", "-B", "1024")
                    .redirectError(ProcessBuilder.Redirect.DISCARD).redirectOutput(out.toFile()).start();
            if (!process.waitFor(60, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IOException("aubioonset did not end");
            }
        } catch (InterruptedException e) {
            throw new IOException(e);
        }
        List<Double> onsets = new ArrayList<>();
        for (String line : Files.readAllLines(out)) {
            onsets.add(Double.parseDouble(line.strip()));
        }
        return onsets;
    }
}
