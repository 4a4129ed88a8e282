package countstave.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.AndWords;
import countstave.count.CountingSystem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SystemTablesTest {

    /** Where the tables of the page begin; everything below is written from the data files. */
    private static final String BEGIN = "<!-- from here on written from the data files: mvn test -Dtest=SystemTablesTest -Dcountstave.write=true -->\n";

    static java.util.List<String> names() {
        return CountingSystem.names();
    }

    @Test
    void theListNamesEverySystemAndLanguage() throws IOException {
        StringBuilder out = new StringBuilder();
        new SystemTables(out, TextOptions.DEFAULT).list();
        for (String name : CountingSystem.names()) {
            assertTrue(out.toString().contains("\n  " + name + " "), name);
        }
        for (AndWords.Language language : AndWords.languages()) {
            assertTrue(out.toString().contains("\n  " + language.code() + "  " + language.name()), language.code());
        }
        assertTrue(out.toString().lines().allMatch(l -> CellWidth.of(l) <= 80), out.toString());
    }

    @ParameterizedTest
    @MethodSource("names")
    void aSystemIsShownWithItsSourcesAndDoubts(String name) throws IOException {
        CountingSystem system = CountingSystem.named(name);
        StringBuilder out = new StringBuilder();
        new SystemTables(out, TextOptions.DEFAULT).show(system);
        String text = out.toString().replaceAll("\\s+", " ");
        assertTrue(text.contains("Source: " + system.source()), text);
        for (SystemTables.Line line : SystemTables.lines(system)) {
            assertTrue(text.contains(String.join(" ", line.words())), line.toString());
            assertTrue(text.contains(line.source()) && text.contains(line.uncertain()), line.toString());
            assertTrue(line.uncertain().isEmpty() || text.contains(line.key().parts() + " (?)"), line.toString());
        }
        assertTrue(out.toString().lines().allMatch(l -> CellWidth.of(l) <= 80), out.toString());
    }

    /** docs/systems.md shows what the data files say. */
    @Test
    void thePageAgreesWithTheData() throws IOException {
        Path page = Path.of("docs/systems.md");
        String text = Files.readString(page);
        int begin = text.indexOf(BEGIN);
        assertTrue(begin > 0, "the page has lost its line: " + BEGIN);
        String head = text.substring(0, begin + BEGIN.length());
        String written = head + tables();
        if (Boolean.getBoolean("countstave.write")) {
            Files.writeString(page, written);
        }
        assertEquals(written, Files.readString(page));
    }

    private static String tables() {
        StringBuilder page = new StringBuilder();
        for (String name : CountingSystem.names()) {
            CountingSystem system = CountingSystem.named(name);
            page.append("\n### ").append(name).append("\n\n").append(escaped(system.title())).append(". ")
                    .append(escaped(system.about())).append("\n\n");
            page.append("| a beat of | is said | source | not certain |\n| --- | --- | --- | --- |\n");
            for (SystemTables.Line line : SystemTables.lines(system)) {
                page.append("| ").append(line.parts()).append(" | ").append(escaped(String.join(" ", line.words()))).append(" | ")
                        .append(escaped(line.byRule() ? "by rule" + (line.source().isEmpty() ? "" : ": " + line.source()) : line.source()))
                        .append(" | ").append(escaped(line.uncertain())).append(" |\n");
            }
            page.append("\nSource: ").append(escaped(system.source())).append(".\n");
            if (!system.limits().isEmpty()) {
                page.append("Left out: ").append(escaped(system.limits())).append(".\n");
            }
            if (!system.key().isEmpty()) {
                page.append("Spoken: ").append(escaped(system.key())).append(".\n");
            }
        }
        page.append("\n### Words for \u201cand\u201d\n\n| `--and` | language | beat of four | beat of three | source | not certain |\n"
                + "| --- | --- | --- | --- | --- | --- |\n");
        for (AndWords.Language language : AndWords.languages()) {
            page.append("| ").append(language.code()).append(" | ").append(language.name()).append(" | 1 ")
                    .append(escaped(String.join(" ", language.fourths()))).append(" | 1 ").append(String.join(" ", language.thirds()))
                    .append(" | ").append(escaped(language.source())).append(" | ").append(escaped(language.uncertain())).append(" |\n");
        }
        return page.toString();
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("|", "\\|").replace("<", "&lt;");
    }
}
