package countstave.bench;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.audiveris.proxymusic.util.Marshalling;

/** The least that a program can do with a score: have it bound by ProxyMusic. Start-up is measured against it. */
final class Baseline {

    private Baseline() {
    }

    public static void main(String[] args) throws Exception {
        try (InputStream in = Files.newInputStream(Path.of(args[0]))) {
            System.out.println(Marshalling.unmarshal(in).getClass());
        }
    }
}
