package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import countstave.files.Console;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/** The manual pages say what the commands say, in a form that man reads. */
class ManPageTest {

    @TempDir
    Path folder;

    private static CommandLine all() {
        return Countstave.commandLine(new Console(new ByteArrayInputStream(new byte[0]),
                new PrintStream(OutputStream.nullOutputStream()), new PrintStream(OutputStream.nullOutputStream())));
    }

    /** Requests of man(7), groff_man(7): title, section, paragraph, tagged paragraph, inset, example, and how to set them. */
    private static final Set<String> REQUESTS = Set.of("TH", "SH", "PP", "TP", "RS", "RE", "EX", "EE", "BR", "nh", "ad");

    @Test
    void theFolderIsMade() {
        assertEquals(0, Run.of("generate-man", "-o", folder.resolve("share/man1").toString()).code());
        assertTrue(Files.exists(folder.resolve("share/man1/countstave.1")));
    }

    @Test
    void everyOptionOfEveryCommandIsThere() throws IOException {
        assertEquals(0, Run.of("generate-man", "-o", folder.toString()).code());
        Set<String> pages = new TreeSet<>(Set.of("countstave.1"));
        for (CommandLine command : all().getSubcommands().values()) {
            String name = "countstave-" + command.getCommandName() + ".1";
            pages.add(name);
            String page = Files.readString(folder.resolve(name));
            assertTrue(page.startsWith(".TH \"COUNTSTAVE\\-"), page.substring(0, 40));
            for (OptionSpec option : command.getCommandSpec().options()) {
                for (String written : option.names()) {
                    assertTrue(page.contains("\\fB" + written.replace("-", "\\-") + "\\fR"), name + ": " + written);
                }
            }
            for (String line : page.lines().filter(l -> l.startsWith(".") || l.startsWith("'")).toList()) {
                assertTrue(REQUESTS.contains(line.substring(1).split(" ")[0]), line);
            }
            assertTrue(page.chars().allMatch(c -> c == '\n' || c >= ' ' && c < 0x7F), name + " is not plain ASCII");
            assertEquals(page, Run.of("generate-man", command.getCommandName()).out());
        }
        assertEquals(pages, new TreeMap<>(Run.tree(folder)).keySet());
    }

    /** groff with all warnings has nothing to say, and sets what stands in the help. */
    @Test
    void theFormatterHasNothingToSay() throws IOException, InterruptedException {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/groff")), "no groff here");
        Run.of("generate-man", "-o", folder.toString());
        for (String page : List.of("countstave.1", "countstave-annotate.1", "countstave-check.1", "countstave-practice.1")) {
            Process groff = new ProcessBuilder("/usr/bin/groff", "-man", "-ww", "-Tascii", "-P-c", "-P-b", "-P-u",
                    folder.resolve(page).toString()).redirectErrorStream(true).start();
            String text = new String(groff.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
            assertEquals(0, groff.waitFor());
            assertTrue(!text.contains("warning:") && !text.contains("error:"), text);
            assertTrue(text.contains("NAME") && text.contains("SYNOPSIS") && text.contains("SEE ALSO"), text);
        }
    }

    @Test
    void refusesWhatIsNoCommand() {
        Run run = Run.of("generate-man", "sing");
        assertEquals(2, run.code());
        assertTrue(run.err().contains("there is no command 'sing'"), run.err());
    }
}
