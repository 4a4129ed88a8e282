package countstave.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * The examples of the pages are what the commands print, their command lines run, and their options are those of
 * {@code --help}. An example that nobody makes here fails.
 */
class DocsTest {

    private static final Pattern FENCED = Pattern.compile("^```\n(.*?)^```$", Pattern.MULTILINE | Pattern.DOTALL);
    private static final Pattern INDENTED = Pattern.compile("(?<=\n\n)(?: {4}.*\n)+");
    /** Ours as typed; those for Maven, and for the image, which is not built by the tests, are not run. */
    private static final Pattern OURS = Pattern.compile("(?:^|&& )(?:countstave|java -jar target/countstave\\.jar) (.*)$");
    private static final Pattern OTHERS = Pattern.compile("^(?:mvn|jpackage|sudo|target/image/countstave/bin/countstave) .*");
    private static final Pattern OPTION = Pattern.compile("(?<![\\w-])--[a-z][a-z-]*[a-z]");
    private static final String FORMULA =
            "difficulty = changes per bar + 3 × fastest second / voice limit + rarity + distance / 2\n";
    private static final List<String> COMMANDS = List.of("count", "annotate", "strip", "systems", "check", "practice", "listen", "say", "parts",
            "help", "generate-man", "generate-completion");

    @TempDir
    Path folder;

    private record Block(Path page, String text) {

        boolean isCommands() {
            return text.lines().allMatch(l -> OURS.matcher(l).find() || OTHERS.matcher(l).matches());
        }
    }

    private interface Maker {
        String make() throws IOException;
    }

    private static List<Path> pages() throws IOException {
        try (Stream<Path> docs = Files.list(Path.of("docs"))) {
            return Stream.concat(Stream.of(Path.of("README.md")), docs.filter(p -> p.toString().endsWith(".md")).sorted())
                    .toList();
        }
    }

    private static List<Block> blocks() throws IOException {
        List<Block> blocks = new ArrayList<>();
        for (Path page : pages()) {
            String text = Files.readString(page);
            FENCED.matcher(text).results().forEach(m -> blocks.add(new Block(page, m.group(1))));
            INDENTED.matcher(FENCED.matcher(text).replaceAll("")).results()
                    .forEach(m -> blocks.add(new Block(page, m.group().replaceAll("(?m)^ {4}", ""))));
        }
        return blocks;
    }

    /** The blocks of a page that are no command lines, in order, fenced ones first. */
    private static List<String> shown(String page) throws IOException {
        return blocks().stream().filter(b -> b.page().equals(Path.of(page)) && !b.isCommands()).map(Block::text).toList();
    }

    private static DynamicTest example(String page, int which, Maker maker) {
        return DynamicTest.dynamicTest(page + ", example " + (which + 1),
                () -> assertEquals(maker.make(), shown(page).get(which)));
    }

    /** In the order in which they stand on the pages. */
    @TestFactory
    Stream<DynamicTest> whatTheyShow() {
        DocsExamples make = new DocsExamples(folder);
        return Stream.of(
                example("README.md", 0, make::barOfReadme),
                example("docs/count.md", 0, make::twoBars),
                example("docs/count.md", 1, make::voicesAndFeltNotes),
                example("docs/json.md", 0, make::document),
                example("docs/json.md", 1, make::segments),
                example("docs/listen.md", 0, DocsExamples::aTake),
                example("docs/many-files.md", 0, DocsExamples::partsOfAScore),
                example("docs/many-files.md", 1, () -> withTimeOf(shown("docs/many-files.md").get(1), make.summaryOfMany())),
                example("docs/many-files.md", 2, make::documentOfMany),
                example("docs/spelling.md", 0, make::findingsThatRepeat),
                example("docs/spelling.md", 2, make::mistakes),
                example("docs/spelling.md", 3, make::rules),
                example("docs/spelling.md", 4, DocsExamples::summaryOfFindings),
                example("docs/systems.md", 1, make::faultySystem));
    }

    /** Seconds are those of another machine. */
    private static String withTimeOf(String shown, String made) {
        Matcher time = Pattern.compile("[\\d.]+ s$", Pattern.MULTILINE).matcher(shown);
        assertTrue(time.find(), shown);
        return made.replaceFirst("[\\d.]+ s\n$", time.group() + "\n");
    }

    /** All that stands on the pages: those compared above, the two files below, and a formula. */
    @Test
    void thereIsNoOther() throws IOException {
        assertEquals(List.of("README.md 1", "docs/count.md 2", "docs/json.md 2", "docs/listen.md 1", "docs/many-files.md 3", "docs/practice.md 1",
                "docs/spelling.md 5", "docs/systems.md 2"), blocks().stream().filter(b -> !b.isCommands())
                .collect(Collectors.groupingBy(b -> b.page().toString().replace('\\', '/'), Collectors.counting()))
                .entrySet().stream().map(e -> e.getKey() + " " + e.getValue()).sorted().toList());
        assertEquals(FORMULA, shown("docs/practice.md").get(0));
    }

    /** Three of its rules are set: one is off, one is only a hint, one an error. */
    @Test
    void theSettingsOfAHouse() throws IOException {
        DocsExamples make = new DocsExamples(folder);
        String usual = make.mistakes();
        String settings = shown("docs/spelling.md").get(1);
        String made = make.withSettings(settings + "tuplet-reducible = off\n");
        assertTrue(usual.contains("warning, beam-against-meter") && made.contains("hint, beam-against-meter"), made);
        assertTrue(usual.contains("warning, rest-hides-beat") && made.contains("error, rest-hides-beat"), made);
        assertTrue(usual.contains("tuplet-reducible") && !made.contains("tuplet-reducible"), made);
    }

    @Test
    void theSystemOfASchool() throws IOException {
        String system = shown("docs/systems.md").get(0);
        String said = new DocsExamples(folder).inSystem(system, "3:2[8 8 8] 6:4[16 16 16 16 16 16]");
        assertEquals("│ 1 ki ta │ 2 ki ta & ki ta │", said.strip().replaceAll(" +", " "));
    }

    /** Every command line, on scores of these names; outputs go beside them. */
    @TestFactory
    Stream<DynamicTest> theCommandLines() throws IOException {
        String score = Files.readString(Path.of("scores/song.musicxml"));
        for (String name : List.of("chart.musicxml", "parts/low/drums 1.musicxml", "parts/a.musicxml")) {
            Files.createDirectories(folder.resolve(name).getParent());
            Files.writeString(folder.resolve(name), score);
        }
        Files.createDirectories(folder.resolve("target"));
        assertEquals(0, DocsExamples.run("annotate", folder.resolve("chart.musicxml").toString(), "-o",
                folder.resolve("extra.mxl").toString()).code());
        Files.writeString(folder.resolve("my.system"), shown("docs/systems.md").get(0));
        List<DynamicTest> tests = new ArrayList<>();
        for (Block block : blocks()) {
            for (String line : block.isCommands() ? block.text().lines().toList() : List.<String>of()) {
                Matcher ours = OURS.matcher(line);
                if (ours.find() && !ours.group(1).startsWith("COMMAND")) {
                    tests.add(DynamicTest.dynamicTest(block.page() + ": " + line, () -> accepted(ours.group(1))));
                }
            }
        }
        assertTrue(tests.size() >= 10, tests.size() + " command lines");
        return tests.stream();
    }

    private void accepted(String line) {
        String[] words = line.split(" (?=(?:[^']*'[^']*')*[^']*$)");
        for (int i = 0; i < words.length; i++) {
            words[i] = words[i].replace("'", "");
            boolean names = !words[i].startsWith("-") && words[i].matches(".*(/|\\.musicxml|\\.mxl|\\.system|\\.pdf|\\.svg|\\.wav|\\.html|\\.json)")
                    || words[i].matches("(parts|target)/.*");
            words[i] = names && !words[i].startsWith("scores/") ? folder + "/" + words[i] : words[i];
        }
        DocsExamples.Printed run = DocsExamples.run(words);
        assertTrue(run.code() == 0 || run.code() == 1 && words[0].equals("check"), run.err());
    }

    /** The picture is the second of so many pages. */
    @Test
    void thePageThatIsPictured() throws IOException {
        Matcher pages = Pattern.compile("`annotate scores/dense.musicxml -o dense.pdf` draws \\(page 2 of (\\d)").matcher(
                Files.readString(Path.of("README.md")));
        assertTrue(pages.find());
        Path chart = folder.resolve("dense.pdf");
        assertEquals(0, DocsExamples.run("annotate", "scores/dense.musicxml", "-o", chart.toString()).code());
        try (PDDocument document = Loader.loadPDF(chart.toFile())) {
            assertEquals(Integer.parseInt(pages.group(1)), document.getNumberOfPages());
        }
    }

    private static String help(String... command) {
        String[] words = Stream.concat(Stream.of(command), Stream.of("--help")).toArray(String[]::new);
        return DocsExamples.run(words).out();
    }

    private static Set<String> options(String text) {
        return OPTION.matcher(text).results().map(MatchResult::group).collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void theCommandsAreThoseOfHelp() throws IOException {
        Set<String> listed = Pattern.compile("^ {2}([a-z][a-z-]+) {2,}", Pattern.MULTILINE).matcher(help()).results()
                .map(m -> m.group(1)).collect(Collectors.toCollection(TreeSet::new));
        assertEquals(new TreeSet<>(COMMANDS), listed);
        String readme = Files.readString(Path.of("README.md"));
        for (String command : listed) {
            assertTrue(readme.contains(command.startsWith("generate") ? "`" + command + "`" : "| `" + command), command);
        }
    }

    /** No page speaks of an option that no command has. */
    @Test
    void everyOptionIsOneOfHelp() throws IOException {
        Set<String> known = options(help());
        COMMANDS.forEach(command -> known.addAll(options(help(command))));
        for (Path page : pages()) {
            Set<String> unknown = options(Files.readString(page).replaceAll("(?m)^ {4}(?:mvn|jpackage) .*", ""));
            unknown.removeAll(known);
            assertEquals(Set.of(), unknown, page.toString());
        }
    }

    /** A table of options names those of its command, with the values that {@code --help} names. */
    @Test
    void theTablesOfOptions() throws IOException {
        assertEquals(Set.of("--paper", "--landscape", "--margin", "--staff-size", "--large", "--unplayed", "--title",
                "--composer", "--bars-of-rest", "--blank", "--no-answers", "--with-key"),
                table("docs/chart.md", "annotate"));
        Set<String> check = options(help("check"));
        check.removeAll(Set.of("--help", "--version", "--threads", "--verbose"));
        assertEquals(check, table("docs/spelling.md", "check"));
        assertEquals(Set.of("--click", "--endless", "--peak", "--place", "--silent", "--voice", "--voice-softer", "--voice-sounds"),
                table("docs/practice.md", "practice"));
    }

    /** @return the options in the first column; each value beside them must be one of {@code --help} */
    private static Set<String> table(String page, String command) throws IOException {
        String help = help(command);
        Set<String> found = new TreeSet<>();
        for (String row : Files.readAllLines(Path.of(page))) {
            if (row.startsWith("| `--")) {
                String first = row.split("\\|")[1];
                found.addAll(options(first));
                for (String word : first.replaceAll("`|,| or ", " ").strip().split("\\s+")) {
                    assertTrue(help.contains(word), page + ": " + word + " is not in the help of " + command);
                }
            }
        }
        assertEquals(Set.of(), found.stream().filter(o -> !options(help).contains(o)).collect(Collectors.toSet()));
        return found;
    }
}
