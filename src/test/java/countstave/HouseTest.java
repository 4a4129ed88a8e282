package countstave;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The rules of the house (DEVELOPERS.md), kept by looking at every source file. */
class HouseTest {

    private static final Path MAIN = Path.of("src/main/java");
    private static final Path TESTS = Path.of("src/test/java");
    private static final int LONGEST_FILE = 300;
    /** More components than this are seldom one idea; those that are say so in a comment above the record. */
    private static final int WIDEST_RECORD = 9;
    private static final Pattern RECORD = Pattern.compile(
            "(?<reason>// Wide: \\S[^\\n]*\\n\\s*)?(?:(?:public|protected|private|static|final) )*record (?<name>\\w+)[^(]*\\(");
    private static final Pattern IMPORT = Pattern.compile("^import (?:static )?([a-z][\\w.]*?)\\.[A-Z]", Pattern.MULTILINE);

    /** The process, beside the stories that are told on one screen: from the file to the counts, and to the findings. */
    private static final String MAIN_CLASS = "Main";
    private static final String STORIES = "(stories)";

    /** Which packages of ours a package may use; the arrows run one way. */
    private static final Map<String, Set<String>> MAY_USE = Map.ofEntries(
            Map.entry("time", Set.of()),
            Map.entry("score", Set.of("time")),
            Map.entry("plain", Set.of("score")),
            Map.entry("grid", Set.of("score", "time")),
            Map.entry("count", Set.of("plain", "grid", "score", "time")),
            Map.entry("spelling", Set.of("plain", "grid", "score", "time")),
            Map.entry("practice", Set.of("plain", "count", "grid", "score", "time")),
            Map.entry("musicxml", Set.of("plain", "count", "practice", "grid", "score", "time")),
            Map.entry("pcm", Set.of()),
            Map.entry("take", Set.of("pcm", "plain", "score")),
            Map.entry("listen", Set.of("take", "sound", "practice", "count", "grid", "score", "time")),
            Map.entry("text", Set.of("listen", "take", "plain", "count", "practice", "spelling", "grid", "score", "time")),
            Map.entry("json", Set.of("listen", "take", "plain", "count", "practice", "spelling", "grid", "score", "time")),
            Map.entry("voice", Set.of("pcm", "plain", "count", "score")),
            Map.entry("sound", Set.of("voice", "plain", "count", "practice", "grid", "score", "time")),
            Map.entry("chart", Set.of("listen", "take", "plain", "count", "practice", "grid", "score", "time")),
            Map.entry("page", Set.of("chart", "voice", "json", "plain", "count", "practice", "grid", "score", "time")),
            Map.entry("files", Set.of("plain", "text", "score")),
            Map.entry("batch", Set.of("plain", "files", "json", "text", "musicxml", "score", "time")),
            Map.entry(STORIES, Set.of("plain", "musicxml", "spelling", "count", "grid", "score", "time")),
            Map.entry("folder", Set.of("plain", STORIES, "files", "page", "chart", "sound", "voice", "json", "text", "musicxml", "practice", "count",
                    "grid", "score", "time")),
            Map.entry("cli", Set.of("listen", "take", "plain", STORIES, "batch", "folder", "files", "page", "chart", "sound", "voice", "json", "text", "musicxml",
                    "practice", "spelling", "count", "grid", "score", "time")),
            Map.entry(MAIN_CLASS, Set.of("cli", "files")));

    /** Libraries and who alone may know them. */
    private static final Map<String, Set<String>> ONLY_IN = Map.of(
            "org.audiveris", Set.of("musicxml"),
            "com.ctc.wstx", Set.of("musicxml"),
            "jakarta.xml", Set.of("musicxml"),
            "javax.xml", Set.of("musicxml"),
            "org.apache", Set.of("chart"),
            "com.fasterxml", Set.of("json"),
            "picocli", Set.of("cli"),
            "javax.sound", Set.of("sound", "voice", "take", "pcm"),
            "org.jtransforms", Set.of("take"));

    private static List<Path> sources() throws IOException {
        return sources(MAIN);
    }

    private static List<Path> sources(Path root) throws IOException {
        try (Stream<Path> files = Files.walk(root)) {
            return files.filter(f -> f.toString().endsWith(".java")).sorted().toList();
        }
    }

    private static String room(Path file) {
        Path inside = MAIN.resolve("countstave").relativize(file);
        return inside.getNameCount() > 1 ? inside.getName(0).toString()
                : inside.toString().equals(MAIN_CLASS + ".java") ? MAIN_CLASS : STORIES;
    }

    @Test
    void arrowsBetweenPackagesRunOneWay() throws IOException {
        List<String> wrong = new ArrayList<>();
        for (Path file : sources()) {
            String room = room(file);
            assertTrue(MAY_USE.containsKey(room), "no rule for package " + room);
            Matcher imports = IMPORT.matcher(Files.readString(file));
            while (imports.find()) {
                String used = imports.group(1);
                if (used.equals("countstave") || used.startsWith("countstave.")) {
                    String other = used.equals("countstave") ? STORIES : used.split("\\.")[1];
                    if (!other.equals(room) && !MAY_USE.get(room).contains(other)) {
                        wrong.add(file + " uses " + used);
                    }
                }
            }
        }
        assertEquals(List.of(), wrong);
    }

    /** What a package may use may itself use nothing of it, directly or through others. */
    @Test
    void theRulesHaveNoCircle() {
        for (String room : MAY_USE.keySet()) {
            Set<String> reached = new HashSet<>(MAY_USE.get(room));
            boolean further = true;
            while (further) {
                further = reached.addAll(reached.stream().flatMap(other -> MAY_USE.get(other).stream()).toList());
            }
            assertFalse(reached.contains(room), room + " comes back to itself");
        }
    }

    @Test
    void librariesAreKnownInOnePlace() throws IOException {
        List<String> wrong = new ArrayList<>();
        for (Path file : sources()) {
            Matcher imports = IMPORT.matcher(Files.readString(file));
            while (imports.find()) {
                for (Map.Entry<String, Set<String>> rule : ONLY_IN.entrySet()) {
                    if (imports.group(1).startsWith(rule.getKey()) && !rule.getValue().contains(room(file))) {
                        wrong.add(file + " uses " + imports.group(1));
                    }
                }
            }
        }
        assertEquals(List.of(), wrong);
    }

    @Test
    void noFileGrowsPastOneSitting() throws IOException {
        List<String> wrong = new ArrayList<>();
        for (Path file : sources()) {
            long lines = Files.readString(file).lines().count();
            if (lines > LONGEST_FILE) {
                wrong.add(file + " has " + lines + " lines");
            }
        }
        assertEquals(List.of(), wrong);
    }

    @Test
    void recordsAreNarrowOrSayWhyNot() throws IOException {
        List<String> wrong = new ArrayList<>();
        int seen = 0;
        for (Path file : sources()) {
            String code = Files.readString(file).replaceAll("(?s)/\\*.*?\\*/", "");
            Matcher records = RECORD.matcher(code);
            while (records.find()) {
                seen++;
                int components = components(code.substring(records.end()));
                if (components > WIDEST_RECORD && records.group("reason") == null) {
                    wrong.add(file + ": " + records.group("name") + " has " + components + " components");
                } else if (components <= WIDEST_RECORD && records.group("reason") != null) {
                    wrong.add(file + ": " + records.group("name") + " is not wide");
                }
            }
        }
        assertTrue(seen > 100, seen + " records");
        assertEquals(List.of(), wrong);
    }

    /** How many components a record's header has, from behind its opening parenthesis on. */
    private static int components(String header) {
        int depth = 0;
        int commas = 0;
        boolean any = false;
        for (char c : header.toCharArray()) {
            if (c == ')' && depth == 0) {
                return any ? commas + 1 : 0;
            }
            depth += c == '(' || c == '<' ? 1 : c == ')' || c == '>' ? -1 : 0;
            commas += c == ',' && depth == 0 ? 1 : 0;
            any |= !Character.isWhitespace(c);
        }
        throw new AssertionError("a header without an end");
    }

    /** So that a name says which class is meant. */
    @Test
    void noNameStandsForTwoClasses() throws IOException {
        Map<String, Path> first = new HashMap<>();
        List<String> wrong = new ArrayList<>();
        for (Path root : List.of(MAIN, TESTS)) {
            for (Path file : sources(root)) {
                Path before = first.putIfAbsent(file.getFileName().toString(), file);
                if (before != null && !file.endsWith("package-info.java")) {
                    wrong.add(before + " and " + file);
                }
            }
        }
        assertEquals(List.of(), wrong);
    }
}
