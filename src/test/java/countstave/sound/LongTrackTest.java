package countstave.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.testing.JavaProcess;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** More than an hour of spoken sound in a process whose whole memory is an eighth of the file, at 100 times its speed. */
class LongTrackTest {

    @Test
    @Timeout(120)
    void anHourFitsIntoLittleMemory() throws Exception {
        List<String> command = JavaProcess.command("-Xmx24m");
        command.add(LongTrack.class.getName());
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String told = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        assertEquals(0, process.waitFor(), told);
        String[] figures = told.split(" ");
        assertTrue(Long.parseLong(figures[0]) > 3600, told);
        assertEquals(figures[2], figures[1]);
        assertTrue(Long.parseLong(figures[1]) > 150_000_000, told);
        // on one core, with the quick compiler only
        assertTrue(Long.parseLong(figures[3]) * 100 < Long.parseLong(figures[0]) * 1000, told);
    }
}
