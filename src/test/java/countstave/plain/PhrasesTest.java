package countstave.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.spelling.Rule;
import countstave.spelling.rules.AllRules;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every language tells all that English tells, of the same things, and nothing is told that has no words. */
class PhrasesTest {

    private static final Pattern KEY = Pattern.compile("(?:phrase|phrases(?:\\(\\))?\\.text|p\\.text)\\(\\s*\"([a-z][a-z0-9.-]*)\"");
    private static final Pattern PLACE = Pattern.compile("\\{([0-9])");

    /** Words that are the same in both languages. */
    private static final Set<String> ALIKE = Set.of("chart.heading", "felt.sayable", "day.group", "turn.count", "manner.uneven",
            "amount.of.tuplet", "parts.name", "length.in", "finding.kind");

    static Stream<String> others() {
        return Phrases.codes().stream().filter(code -> !code.equals("en"));
    }

    private static Properties read(String code) {
        Properties properties = new Properties();
        String name = "phrases" + (code.equals("en") ? "" : "_" + code) + ".properties";
        try (Reader in = new InputStreamReader(Phrases.class.getResourceAsStream(name), StandardCharsets.UTF_8)) {
            properties.load(in);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        return properties;
    }

    /** The places of a sentence; inside a choice they count too. */
    private static Set<String> places(String pattern) {
        return PLACE.matcher(pattern).results().map(m -> m.group(1)).collect(Collectors.toCollection(TreeSet::new));
    }

    @ParameterizedTest
    @MethodSource("others")
    void everyKeyOfEnglishAndNoOther(String code) {
        Set<String> keys = new TreeSet<>(read(code).stringPropertyNames());
        // what the shipped systems and the rules say of themselves stands in English in their files
        keys.removeIf(key -> key.matches("(?:system\\.(?:about\\.)?|rule\\.)[a-z.-]+") && !key.equals("system.with-and"));
        assertEquals(new TreeSet<>(read("en").stringPropertyNames()), keys);
    }

    @ParameterizedTest
    @MethodSource("others")
    void sentencesSpeakOfTheSameThings(String code) {
        Properties english = read("en");
        Properties other = read(code);
        List<String> same = new ArrayList<>();
        for (String key : english.stringPropertyNames()) {
            assertEquals(places(english.getProperty(key)), places(other.getProperty(key)), key);
            assertFalse(other.getProperty(key).isBlank(), key);
            if (key.indexOf('.') > 0 && other.getProperty(key).length() > 12 && other.getProperty(key).equals(english.getProperty(key))) {
                same.add(key);
            }
        }
        same.removeAll(ALIKE);
        assertEquals(List.of(), same, "left in English");
    }

    /** A single apostrophe would swallow what follows it. */
    @ParameterizedTest
    @MethodSource("others")
    void everySentenceCanBeMade(String code) {
        for (Properties properties : List.of(read("en"), read(code))) {
            for (String key : properties.stringPropertyNames()) {
                String pattern = properties.getProperty(key);
                assertFalse(pattern.replace("''", "").contains("'"), key);
                for (int number : List.of(0, 1, 2, 7)) {
                    String text = new MessageFormat(pattern, Locale.ROOT).format(new Object[] {number, number, number, number, number, number});
                    assertFalse(text.contains("{") || text.contains("choice"), key + ": " + text);
                }
            }
        }
    }

    /** English ordinals as any grammar has them; German ones have a full stop. */
    @Test
    void placesInARow() {
        assertEquals(List.of("1st", "2nd", "3rd", "4th", "10th", "11th", "12th", "13th", "20th", "21st", "22nd", "23rd", "24th", "101st", "111th",
                "112th", "113th", "122nd"), Stream.of(1, 2, 3, 4, 10, 11, 12, 13, 20, 21, 22, 23, 24, 101, 111, 112, 113, 122)
                .map(Phrases.ENGLISH::ordinal).toList());
        assertEquals(List.of("1.", "3.", "12.", "21."), Stream.of(1, 3, 12, 21).map(Phrases.in("de")::ordinal).toList());
    }

    /** One of a kind is no plural, and several are no singular. */
    @Test
    void oneAndSeveral() {
        Phrases english = Phrases.ENGLISH;
        Phrases german = Phrases.in("de");
        assertTrue(english.text("plan.more", 1).contains(" 1 easier passage;"));
        assertTrue(english.text("plan.more", 3).contains(" 3 easier passages;"));
        assertTrue(english.text("plan.seam", "a)", 1, "60", "x").contains(" 1 loop at 60"));
        assertTrue(english.text("plan.seam", "a)", 2, "60", "x").contains(" 2 loops at 60"));
        assertTrue(english.text("day.at-sight", 1, "5").endsWith(": bar 5."));
        assertTrue(english.text("day.at-sight", 3, "5, 7").endsWith(": bars 5, 7."));
        assertTrue(english.text("day.left", 1, "5").contains(" for bar 5:"));
        assertTrue(german.text("day.left", 1, "5").contains(" für Takt 5:"));
        assertTrue(german.text("day.left", 2, "5\u20136").contains(" für die Takte 5\u20136:"));
    }

    /** What the code asks for is there, and what is there is asked for. */
    @Test
    void keysOfTheCode() throws IOException {
        Set<String> asked = new TreeSet<>();
        StringBuilder code = new StringBuilder();
        try (Stream<Path> tree = Files.walk(Path.of("src/main/java"))) {
            for (Path file : tree.filter(f -> f.toString().endsWith(".java")).toList()) {
                String text = Files.readString(file);
                asked.addAll(KEY.matcher(text).results().map((MatchResult m) -> m.group(1)).collect(Collectors.toSet()));
                code.append(text);
            }
        }
        Set<String> there = read("en").stringPropertyNames();
        asked.removeIf(key -> key.endsWith("."));
        Set<String> missing = new TreeSet<>(asked);
        missing.removeAll(there);
        missing.removeIf(key -> code.indexOf("text(\"" + key + "\", ") >= 0 && !key.contains("."));
        assertEquals(Set.of(), missing);
        // a key stands between two quotation marks
        Set<String> all = new HashSet<>(List.of(code.toString().split("\"")));
        List<String> unused = there.stream().filter(key -> !all.contains(key) && Stream.of("weekday.", "value.",
                "tuplet.", "page.", "manner.groups.", "why.term.", "stage.", "work.", "seam.size.", "day.kind.", "length.", "pitch.", "severity.",
                "found.number.", "rules.heading.")
                .noneMatch(key::startsWith)).sorted().toList();
        assertEquals(List.of(), unused);
    }

    /** In English they stand beside each rule. */
    @ParameterizedTest
    @MethodSource("others")
    void everyRuleSpeaksForItself(String code) {
        Set<String> wanted = new TreeSet<>();
        for (Rule rule : AllRules.list()) {
            wanted.addAll(List.of("rule." + rule.info().id() + ".summary", "rule." + rule.info().id() + ".reason",
                    "rule." + rule.info().id() + ".example", "rule." + rule.info().id() + ".near-miss"));
            if (rule.info().remedy() != null) {
                wanted.add("rule." + rule.info().id() + ".remedy");
            }
        }
        assertEquals(wanted, read(code).stringPropertyNames().stream().filter(key -> key.startsWith("rule."))
                .collect(Collectors.toCollection(TreeSet::new)));
    }

    @Test
    void plurals() {
        assertEquals("Bar 5", Phrases.ENGLISH.text("bars", 1, "5"));
        assertEquals("Bars 5, 7", Phrases.ENGLISH.text("bars", 2, "5, 7"));
        assertEquals("Auch in den Takten 3, 4.", Phrases.in("de").text("plan.also", 2, "3, 4"));
        assertEquals("Auch in Takt 3.", Phrases.in("de").text("plan.also", 1, "3"));
    }

    @Test
    void theLanguageOfThePersonOrEnglish() {
        assertEquals("de", Phrases.of(Locale.GERMANY).code());
        assertEquals("en", Phrases.of(Locale.JAPAN).code());
        assertEquals("2,5", Phrases.in("de").decimal(2.46, 1));
        assertEquals("2.5", Phrases.ENGLISH.decimal(2.46, 1));
        assertNotEquals(Phrases.ENGLISH, Phrases.in("de"));
        assertTrue(assertThrows(IllegalArgumentException.class, () -> Phrases.in("xx")).getMessage().contains("xx"));
    }
}
