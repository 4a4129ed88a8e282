package countstave.bench;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.audiveris.proxymusic.util.Marshalling;
import org.audiveris.proxymusic.util.Marshalling.UnmarshallingException;

/**
 * The least that a program can do with scores: have them bound by ProxyMusic, one after the other. Start-up and real
 * scores are measured against it.
 */
final class Baseline {

    private Baseline() {
    }

    public static void main(String[] args) throws IOException {
        int bound = 0;
        for (String score : args) {
            try (InputStream in = open(Path.of(score))) {
                bound += Marshalling.unmarshal(in) == null ? 0 : 1;
            } catch (UnmarshallingException e) {
                System.err.println(score + ": not bound");
            }
        }
        System.out.println(bound);
    }

    /** The score's text; of a compressed score the first entry that may be it. */
    private static InputStream open(Path score) throws IOException {
        byte[] bytes = Files.readAllBytes(score);
        if (bytes[0] != 'P' || bytes[1] != 'K') {
            return new ByteArrayInputStream(bytes);
        }
        ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes));
        for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
            if (entry.getName().endsWith("xml") && !entry.getName().startsWith("META-INF")) {
                return new ByteArrayInputStream(zip.readAllBytes());
            }
        }
        throw new IOException(score + " holds no score");
    }
}
