package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.files.Console;
import countstave.testing.JavaProcess;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/** Help as it is read: where the hand looks for it, as wide as the terminal, and in the order of use. */
class HelpTest {

    private static CommandLine all() {
        return Countstave.commandLine(new Console(new ByteArrayInputStream(new byte[0]),
                new PrintStream(OutputStream.nullOutputStream()), new PrintStream(OutputStream.nullOutputStream())));
    }

    @Test
    void helpIsACommandToo() {
        assertEquals(Run.of("--help").out(), Run.of("help").out());
        for (String command : List.of("count", "annotate", "check")) {
            assertEquals(Run.of(command, "--help").out(), Run.of("help", command).out());
        }
        Run unknown = Run.of("help", "sing");
        assertEquals(2, unknown.code());
        assertTrue(unknown.err().startsWith("countstave: there is no command 'sing'; the commands are count, "), unknown.err());
    }

    /** What is needed first stands first; what few need has its heading, and nothing stands there by accident. */
    @Test
    void optionsStandInTheOrderOfUse() {
        String help = Run.of("annotate", "--help").out();
        int before = 0;
        for (String next : List.of("--part=", "--bars=", "--system=", "--tempo=", "--as=", "--output=", "--force ", "--help ",
                "Rarely used:", "--part-required ", "--threads=")) {
            int at = help.indexOf(next, before);
            assertTrue(at > 0, next + " does not come in its turn\n" + help);
            before = at;
        }
        for (CommandLine command : all().getSubcommands().values()) {
            for (OptionSpec option : command.getCommandSpec().options()) {
                assertTrue(option.order() > 0 || HelpLayout.isStandard(option), command.getCommandName() + " "
                        + option.longestName() + " has no place in the order of use");
            }
            assertEquals(command.getCommandSpec().options().size(), HelpLayout.ordered(command.getCommandSpec(), false).size()
                    + HelpLayout.ordered(command.getCommandSpec(), true).size());
        }
        String page = Run.of("generate-man", "annotate").out();
        assertTrue(page.indexOf("RARELY USED OPTIONS") > page.indexOf("SYNOPSIS"), page);
    }

    @Test
    void noLineIsWiderThanTheTerminal() {
        for (int width : new int[] {60, 72, 100}) {
            CommandLine line = all();
            HelpLayout.set(line, String.valueOf(width));
            Stream.concat(Stream.of(line), line.getSubcommands().values().stream()).forEach(command ->
                    command.getUsageMessage().lines().forEach(each -> assertTrue(each.length() <= width, width + ": " + each)));
        }
    }

    /** Through a pipe, where no terminal can be asked. */
    @Test
    void theWidthHoldsInAPipeToo() throws IOException, InterruptedException {
        List<String> command = JavaProcess.command();
        command.addAll(List.of("countstave.Main", "count", "--help"));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().put("COLUMNS", "64");
        Process run = builder.start();
        String help = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, run.waitFor());
        int widest = help.lines().mapToInt(String::length).max().orElse(0);
        assertTrue(widest <= 64 && widest > 55, widest + " columns\n" + help);
    }

    @Test
    void costsHaveAScale() {
        assertTrue(Run.of("count", "--help").out().replaceAll("\\s+", " ").contains("1 is one word that is said and not played;"));
        assertTrue(Run.of("count", "scores/groove.musicxml", "--bars", "1", "--why").out()
                .contains("(1 is one word that is said and not played;"));
    }
}
