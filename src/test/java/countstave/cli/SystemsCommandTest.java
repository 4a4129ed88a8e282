package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SystemsCommandTest {

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int run(String... args) {
        return Countstave.run(args, InputStream.nullInputStream(), new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
    }

    @Test
    void listsAndShows() {
        assertEquals(0, run("systems"));
        assertTrue(out.toString(StandardCharsets.UTF_8).contains("\n  takadimi  "));
        assertEquals(0, run("systems", "numbers", "--and", "de"));
        assertTrue(out.toString(StandardCharsets.UTF_8).contains("N e und de"));
        assertEquals("", err.toString(StandardCharsets.UTF_8));
    }

    @Test
    void aFaultyFileIsOneClearLine(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("my.system"), "1 = N\n4 = N e &\n");
        assertEquals(2, run("systems", file.toString()));
        assertEquals("countstave: " + file + ", line 2, column 11: the row \u201c4\u201d needs 4 words, one a part; here are 3\n",
                err.toString(StandardCharsets.UTF_8).replace("\r\n", "\n"));
        assertEquals("", out.toString(StandardCharsets.UTF_8));
    }

    @Test
    void anUnknownNameIsToldWithTheKnownOnes() {
        assertEquals(2, run("systems", "takadimmi"));
        assertTrue(err.toString(StandardCharsets.UTF_8).contains("takadimi"));
        assertEquals(1, err.toString(StandardCharsets.UTF_8).lines().count());
    }

    @Test
    void syllablesOfNoLanguageHaveNoAnd() {
        assertEquals(2, run("systems", "takadimi", "--and", "de"));
        assertEquals("", out.toString(StandardCharsets.UTF_8));
    }
}
