package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import countstave.count.CountingSystem;
import countstave.spelling.rules.AllRules;
import countstave.testing.JavaProcess;
import countstave.testing.Snippets;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the Tab key offers, in a bash of this system. */
class CompletionTest {

    @TempDir
    Path folder;

    @BeforeEach
    void script() throws IOException {
        assumeTrue(Files.isExecutable(Path.of("/bin/bash")), "no bash here");
        Files.writeString(folder.resolve("completion"), Run.of("generate-completion").out());
    }

    /** What is offered for the last of the words; the command is an alias, as the README has it. */
    private List<String> offered(String... words) throws IOException, InterruptedException {
        return offeredBy("countstave", words);
    }

    /** @param command as it was typed */
    private List<String> offeredBy(String command, String... words) throws IOException, InterruptedException {
        return tab(JavaProcess.line() + " countstave.Main", command, words);
    }

    /**
     * The same where the shell's reading of the words is in question: a script answers as the program does, asked for parts
     * or bars of just this score, since each start of the program takes most of a second.
     */
    private List<String> shellOffers(Path score, String command, String... words) throws IOException, InterruptedException {
        StringBuilder script = new StringBuilder();
        for (String kind : List.of("parts", "bars")) {
            Path answer = folder.resolve(kind);
            if (!Files.exists(answer)) {
                Files.writeString(answer, Run.of("values", kind, score.toString()).out());
            }
            script.append("[ \"$*\" = 'values ").append(kind).append(' ').append(score).append("' ] && cat '").append(answer).append("'\n");
        }
        Path answers = Files.writeString(folder.resolve("answers.sh"), script);
        return tab("/bin/sh \"" + answers + "\"", command, words);
    }

    /** @param program what the alias stands for */
    private List<String> tab(String program, String command, String... words) throws IOException, InterruptedException {
        StringBuilder text = new StringBuilder("shopt -s expand_aliases\nalias countstave='" + program + "'\n. '"
                + folder.resolve("completion") + "'\nCOMP_WORDS=('" + command + "'");
        for (String word : words) {
            text.append(" '").append(word).append('\'');
        }
        text.append(")\nCOMP_CWORD=").append(words.length).append("\n_countstave\nprintf '%s\\n' \"${COMPREPLY[@]}\"\n");
        Path script = Files.writeString(folder.resolve("tab.sh"), text);
        Process run = new ProcessBuilder("/bin/bash", "--norc", script.toString()).redirectErrorStream(true).start();
        List<String> lines = new ArrayList<>(new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8).lines().toList());
        run.waitFor();
        lines.remove("");
        return lines;
    }

    @Test
    void commandsAndOptions() throws IOException, InterruptedException {
        assertEquals(Commands.NAMES, offered(""));
        assertEquals(List.of("strip", "say", "systems"), offered("s"));
        assertEquals(List.of("--system", "--steadiness", "--staff", "--staff-size", "--skip-existing").stream().sorted().toList(),
                offered("annotate", "a.mxl", "--s").stream().filter(o -> !o.equals("--swing")).sorted().toList());
        assertEquals(List.of("count", "check"), offered("help", "c").stream().sorted((a, b) -> b.compareTo(a)).toList());
    }

    @Test
    void valuesInLowerCase() throws IOException, InterruptedException {
        assertEquals(CountingSystem.names(), offered("count", "--system", ""));
        assertEquals(List.copyOf(AllRules.ids()), offered("check", "--rule", ""));
        assertEquals(List.of("tie-pitch,beat-hidden"), offered("check", "--without", "tie-pitch,beat"));
        assertTrue(offered("count", "--and", "").containsAll(List.of("de", "fr", "es")));
        assertEquals(List.of("meter"), offered("count", "--beat", "m"));
        assertEquals(List.of("all", "needed", "none"), offered("count", "--unplayed", "=", "").stream().sorted().toList());
        assertEquals(List.of("yes", "no", "dot"), offered("annotate", "--felt", ""));
        assertEquals(List.of("notation", "file"), offered("check", "--about", ""));
        assertEquals(List.of("text", "json", "sarif"), offered("check", "--format", ""));
    }

    /** Of the score that is already named; nothing where none is. */
    @Test
    void partsAndBarsOfTheScore() throws IOException, InterruptedException {
        String score = "scores/meters.musicxml";
        assertEquals(List.of("Bass\\ guitar", "P1", "Percussion", "P2"), offered("count", score, "--part", ""));
        assertEquals(List.of("Percussion"), shellOffers(Path.of(score), "countstave", "count", score, "--part", "Pe"));
        List<String> bars = shellOffers(Path.of(score), "countstave", "count", score, "--bars", "");
        assertEquals(List.of("1", "2", "3"), bars.subList(0, 3));
        assertEquals(List.of("2,10"), shellOffers(Path.of(score), "countstave", "count", score, "--bars", "2,10").stream()
                .filter(b -> b.endsWith(",10")).toList());
        assertEquals(List.of(), offered("count", "--part", ""));
    }

    /** A score is found however its name is quoted. */
    @Test
    void quotedNames() throws IOException, InterruptedException {
        Path score = Files.writeString(folder.resolve("R&B (two) $1.musicxml"),
                Snippets.in("4/4").part("Percussion").bar("4 4 4 4").xml());
        assertEquals(List.of("Percussion"), offered("count", folder + "/R\\&B\\ \\(two\\)\\ \\$1.musicxml", "--part", "Pe"));
        for (String typed : List.of("R\\&B\\ \\(two\\)\\ \\$1.musicxml", "\"R&B (two) \\$1.musicxml\"", "R\"&B (two)\"\\ \\$1.musicxml")) {
            assertEquals(List.of("Percussion"),
                    shellOffers(score, "countstave", "count", folder + "/" + typed, "--part", "Pe"), typed);
        }
    }

    /** A command line that is being typed is read, and nothing of it is run. */
    @Test
    void nothingThatIsTypedIsRun() throws IOException, InterruptedException {
        Path hit = folder.resolve("hit");
        String touch = "touch " + hit;
        Path score = Path.of("scores/meters.musicxml");
        for (String typed : List.of("\"$(" + touch + ")\"", "`" + touch + "`", "$(" + touch + ")", "a;" + touch, "a&" + touch, "a|" + touch,
                "a " + touch, touch, "a\n" + touch, "<(" + touch + ")", ">" + hit, "${x:=$(" + touch + ")}", "a[$(" + touch + ")]=b")) {
            assertEquals(List.of("Percussion"),
                    shellOffers(score, "countstave", "count", typed, score.toString(), "--part", "Pe"), typed);
            assertFalse(Files.exists(hit), typed);
        }
        for (String typed : List.of("$(" + touch + ")/countstave", "`" + touch + "`/countstave", touch + ";countstave", touch + "\ncountstave",
                touch + "&countstave", touch + "|countstave", "countstave>" + hit + " ")) {
            assertEquals(List.of(), shellOffers(score, typed, "count", score.toString(), "--part", ""), typed);
            assertFalse(Files.exists(hit), typed);
        }
    }
}
