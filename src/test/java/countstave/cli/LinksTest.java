package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Links: followed where they are read, never written through, never replaced, and no way round in a circle. */
class LinksTest {

    private static final Path GROOVE = Path.of("scores/groove.musicxml");

    @TempDir
    Path folder;

    private Path score;

    @BeforeEach
    void linksWork() throws IOException {
        score = Files.copy(GROOVE, folder.resolve("score.musicxml"));
        try {
            Files.delete(Files.createSymbolicLink(folder.resolve("try"), score));
        } catch (IOException | UnsupportedOperationException e) {
            assumeTrue(false, "no links here");
        }
    }

    private void refuses(Path link, String part) throws IOException {
        Path leadsTo = Files.readSymbolicLink(link);
        Run run = Run.of("annotate", score.toString(), "-o", link.toString(), "--force");
        assertEquals(2, run.code());
        assertTrue(run.err().contains(part), run.err());
        assertEquals(leadsTo, Files.readSymbolicLink(link));
    }

    @Test
    void anOutputThatIsALinkIsRefused() throws IOException {
        refuses(Files.createSymbolicLink(folder.resolve("in.musicxml"), score), "the score itself");
        assertEquals(Files.readString(GROOVE), Files.readString(score));
        Path other = Files.writeString(folder.resolve("other.txt"), "mine");
        refuses(Files.createSymbolicLink(folder.resolve("out.musicxml"), other), "it is a link");
        assertEquals("mine", Files.readString(other));
        Path nowhere = folder.resolve("nowhere.txt");
        refuses(Files.createSymbolicLink(folder.resolve("dangling.musicxml"), nowhere), "it is a link");
        assertFalse(Files.exists(nowhere));
    }

    @Test
    void aLinkedScoreIsReadAndNotStrippedInPlace() throws IOException {
        Path link = Files.createSymbolicLink(folder.resolve("link.musicxml"), score);
        assertEquals(0, Run.of("annotate", link.toString()).code());
        Path counted = folder.resolve("link-counts.musicxml");
        Path linked = Files.createSymbolicLink(folder.resolve("linked.musicxml"), counted);
        Run strip = Run.of("strip", linked.toString(), "--force");
        assertEquals(2, strip.code());
        assertTrue(strip.err().contains("it is a link"), strip.err());
        assertTrue(Files.isSymbolicLink(linked));
    }

    @Test
    void foldersDoNotLeadRoundInACircle() throws IOException {
        Path parts = Files.createDirectory(folder.resolve("parts"));
        Files.move(score, parts.resolve("score.musicxml"));
        Files.createSymbolicLink(parts.resolve("round"), parts);
        Files.createSymbolicLink(parts.resolve("up"), folder);
        Files.createSymbolicLink(parts.resolve("dead.musicxml"), folder.resolve("none"));
        Path out = folder.resolve("out");
        assertEquals("countstave: 2 scores done", summary(parts.toString(), out));
        assertEquals(Set.of("score.musicxml", "groove.musicxml"), Run.tree(out).keySet());
        assertEquals("countstave: 2 scores done", summary(parts + "/**/*.musicxml", folder.resolve("out2")));
        // the folder itself may be named by a link
        Path way = Files.createSymbolicLink(folder.resolve("way"), parts);
        assertEquals("countstave: 2 scores done", summary(way.toString(), folder.resolve("out3")));
    }

    private static String summary(String scores, Path out) {
        Run run = Run.of("annotate", scores, GROOVE.toString(), "-o", out.toString());
        assertEquals(0, run.code(), run.err());
        return run.summary();
    }

    /** Nothing but a plain file is replaced, and what is replaced hands its permissions on. */
    @Test
    void devicesStayAndPermissionsToo() throws IOException {
        Path device = Path.of("/dev/null");
        assumeTrue(Files.exists(device));
        Run run = Run.of("count", score.toString(), "-o", device.toString(), "--force");
        assertEquals(2, run.code());
        assertTrue(run.err().contains("no plain file"), run.err());
        Path out = Files.writeString(folder.resolve("out.txt"), "mine");
        Files.setPosixFilePermissions(out, PosixFilePermissions.fromString("rw-------"));
        assertEquals(0, Run.of("count", score.toString(), "-o", out.toString(), "--force").code());
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(out)));
    }
}
