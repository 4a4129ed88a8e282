package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.files.Console;
import java.io.ByteArrayInputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/** A run knows the command that it is called with, and one that is called with none knows all. */
class CommandsTest {

    private static final Console SILENT = new Console(new ByteArrayInputStream(new byte[0]),
            new PrintStream(OutputStream.nullOutputStream()), new PrintStream(OutputStream.nullOutputStream()));

    @Test
    void allCommandsStandUnderTheirOwnNames() {
        Map<String, CommandLine> all = Countstave.commandLine(SILENT).getSubcommands();
        assertEquals(Commands.NAMES, List.copyOf(all.keySet()));
        all.forEach((name, line) -> assertEquals("countstave " + name, line.getCommandSpec().qualifiedName()));
    }

    @Test
    void oneCommandIsEnoughForItsOwnRun() {
        assertEquals(List.of("count"), List.copyOf(
                Countstave.commandLine(SILENT, "count", "a.musicxml").getSubcommands().keySet()));
        assertEquals(Commands.NAMES, List.copyOf(
                Countstave.commandLine(SILENT, "--help", "count").getSubcommands().keySet()));
    }
}
