package countstave.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion;
import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.cli.Countstave;
import countstave.count.PartCounts;
import countstave.musicxml.ScoreFile;
import countstave.practice.DayOptions;
import countstave.practice.PracticeOptions;
import countstave.practice.PracticePlan;
import countstave.score.ScoreException;
import countstave.testing.Corpus;
import countstave.testing.PublishedSchemas;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What countstave writes as JSON, held to the JSON Schemas in docs/schemas (draft 2020-12), which refuse what is spoiled. */
class PublishedSchemasTest {

    private static final Path DENSE = Path.of("scores/dense.musicxml");
    private static final Path FEW = Path.of("src/test/resources/musicxml-test-suite");
    /** In bytes. A practice plan has some 25 times the text of the counts: of the corpus, small scores have to do. */
    private static final int SMALL = 60_000;
    /** The documents that are spoiled, by the command that prints them. */
    private static final Map<String, String> PRINTED = new ConcurrentHashMap<>();

    private static String run(int code, String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        assertEquals(code, Countstave.run(args, new ByteArrayInputStream(new byte[0]),
                new PrintStream(out, true, StandardCharsets.UTF_8), new PrintStream(err, true, StandardCharsets.UTF_8)),
                () -> err.toString(StandardCharsets.UTF_8));
        return out.toString(StandardCharsets.UTF_8);
    }

    static List<Path> schemas() throws IOException {
        try (Stream<Path> files = Files.list(PublishedSchemas.FOLDER)) {
            return files.sorted().toList();
        }
    }

    static List<Path> near() throws IOException {
        List<Path> near = new ArrayList<>();
        for (Path folder : List.of(Path.of("scores"), FEW)) {
            try (Stream<Path> files = Files.list(folder)) {
                files.filter(f -> f.toString().matches(".*\\.(musicxml|xml)")).sorted().forEach(near::add);
            }
        }
        return near;
    }

    /** By the schema of the draft itself. */
    @ParameterizedTest
    @MethodSource("schemas")
    void isASchema(Path file) throws IOException {
        JsonNode schema = PublishedSchemas.JSON.readTree(Files.readString(file));
        String draft = schema.get("$schema").asText();
        assertEquals("https://json-schema.org/draft/2020-12/schema", draft);
        assertEquals(Set.of(), JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(SchemaLocation.of(draft)).validate(schema));
        assertEquals(file, PublishedSchemas.file(schema.get("title").asText()));
        assertEquals(schema.get("title"), schema.get("properties").get("schema").get("const"));
    }

    @Test
    void everyContractIsPublishedAndLinked() throws IOException {
        Set<String> contracts = Set.of(JsonWriter.SCHEMA, ManyJson.SCHEMA, PracticeJson.SCHEMA, ListenJson.SCHEMA, "countstave-check/1", "countstave-baseline/1");
        assertEquals(contracts.stream().map(PublishedSchemas::file).collect(Collectors.toSet()), Set.copyOf(schemas()));
        String pages = Files.readString(Path.of("docs/json.md")) + Files.readString(Path.of("docs/many-files.md"))
                + Files.readString(Path.of("docs/listen.md"))
                + Files.readString(Path.of("docs/practice.md")) + Files.readString(Path.of("docs/spelling.md"));
        for (Path file : schemas()) {
            assertTrue(pages.contains("](schemas/" + file.getFileName() + ")"), file + " is not linked");
        }
    }

    /** As the commands print it, each score by itself and swung, fast, with every note said. */
    @ParameterizedTest
    @MethodSource("near")
    void whatTheCommandsPrint(Path score) throws IOException {
        String name = score.toString();
        assertEquals(List.of(), PublishedSchemas.strictly(run(0, "count", name, "--format", "json")));
        assertEquals(List.of(), PublishedSchemas.strictly(
                run(0, "count", name, "--format", "json", "--swing", "2:1", "--tempo", "150", "--system", "takadimi")));
        assertEquals(List.of(), PublishedSchemas.strictly(
                run(0, "count", name, "--format", "json", "--felt", "no", "--voice-limit", "5.25", "--beat", "eighth")));
        assertEquals(List.of(), PublishedSchemas.strictly(run(0, "practice", name, "--format", "json", "--tempo", "140")));
    }

    @Test
    void theFindingsOfManyFiles(@TempDir Path folder) throws IOException {
        Path broken = Files.writeString(folder.resolve("broken.musicxml"), "no score");
        String found = run(2, "check", "scores", FEW.toString(), broken.toString(), "--format", "json");
        assertEquals(List.of(), PublishedSchemas.strictly(found));
        assertTrue(found.contains("\"problem\"") && found.contains("\"tuplet\"") && found.contains("\"voice\""), found);
    }

    /** The frame of many scores, with one that cannot be read; a practice plan has no place among counts. */
    @Test
    void manyScoresInOneDocument(@TempDir Path folder) throws IOException {
        Path broken = Files.writeString(folder.resolve("broken.musicxml"), "no score");
        for (String command : List.of("count", "practice")) {
            JsonNode many = PublishedSchemas.JSON.readTree(
                    run(2, command, DENSE.toString(), broken.toString(), "--format", "json"));
            assertEquals("countstave-many/1", many.get("schema").asText());
            assertEquals(List.of(), PublishedSchemas.problems(many));
            assertEquals(List.of(), PublishedSchemas.strictly(many));
            assertTrue(many.get("scores").get(1).has("problem"));
            String text = many.toString();
            refused(text, "\"problem\":", "\"trouble\":");
            refused(text, "\"result\":", "\"problem\":\"both\",\"result\":");
            refused(text, "\"file\":", "\"name\":");
            refused(text, "\"at\":\"0/1\"", "\"at\":\"0\"");
            refused(text, "\"result\":{\"schema\":\"countstave", "\"result\":{\"schema\":\"other");
        }
    }

    /**
     * Practice plans of every fifth of the small scores of the open corpus. Its counts and findings are held to their
     * schemas where they are made anyway: {@code InvariantsTest}, {@code CorpusCheckTest}.
     */
    @Test
    void practicePlansOfTheCorpus() throws IOException {
        List<Path> small = Corpus.scores().stream().filter(f -> f.toFile().length() < SMALL).toList();
        Map<String, List<String>> wrong = new ConcurrentSkipListMap<>();
        AtomicInteger held = new AtomicInteger();
        IntStream.range(0, small.size()).filter(i -> i % 5 == 0).mapToObj(small::get).forEach(file -> {
            try {
                CountedScore counted = CountedScore.of(ScoreFile.load(file), CountingOptions.defaults());
                List<String> problems = PublishedSchemas.strictly(practice(counted));
                held.incrementAndGet();
                if (!problems.isEmpty()) {
                    wrong.put(file.getFileName().toString(), problems.subList(0, Math.min(5, problems.size())));
                }
            } catch (ScoreException withoutNotes) {
                assertFalse(withoutNotes.getMessage().isBlank());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
        assertEquals(Map.of(), wrong);
        assertTrue(held.get() >= 24, held + " plans");
    }

    private static String practice(CountedScore counted) throws IOException {
        List<PracticePlan> plans = new ArrayList<>();
        for (PartCounts part : counted.parts()) {
            plans.add(PracticePlan.of(part, PracticeOptions.DEFAULT));
        }
        StringWriter out = new StringWriter();
        PracticeJson.write(counted.score().title(), counted.score().source(), plans, 10, DayOptions.DEFAULT, out);
        return out.toString();
    }

    private static void refused(String document, String from, String to) throws IOException {
        assertTrue(document.contains(from), () -> from + " is not in the document");
        JsonNode spoiled = PublishedSchemas.JSON.readTree(document.replaceFirst(Pattern.quote(from),
                Matcher.quoteReplacement(to)));
        assertFalse(PublishedSchemas.problems(spoiled).isEmpty(), () -> from + " may become " + to);
    }

    /** Each of these changes makes the document one that a reader of the contract could not rely on. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "count | \"at\":\"0/1\" | \"at\":0",
        "count | \"at\":\"0/1\" | \"at\":\"0.0\"",
        "count | \"at\":\"0/1\" | \"at\":\"1/0\"",
        "count | \"at\":\"0/1\" | \"at\":\"-1/4\"",
        "count | \"at\":\"0/1\" | \"at\":\"0/4\"",
        "count | \"at\":\"0/1\", | `` ",
        "count | \"played\":true | \"played\":\"true\"",
        "count | \"say\":\"1\" | \"say\":1",
        "count | \"say\":\"1\" | \"say\":\"1 e\"",
        "count | \"say\":\"1\" | \"say\":\"\"",
        "count | \"kind\":\"fill\" | \"kind\":\"full\"",
        "count | \"change\":true | \"change\":1",
        "count | \"grid\": | \"net\":",
        "count | \"felt\":[ | \"felt\":[],\"was\":[",
        "count | \"index\":0 | \"index\":\"0\"",
        "count | \"index\":0 | \"index\":0.5",
        "count | \"number\":\"1\" | \"number\":1",
        "count | \"meter\":\"4/4\" | \"meter\":\"common\"",
        "count | \"length\":\"1/1\" | \"length\":\"1\"",
        "count | \"length\":\"1/1\" | \"length\":\"0/1\"",
        "count | \"beats\":[\"0/1\" | \"beats\":[\"0/1\",\"0/1\"",
        "count | \"attacks\": | \"attack\":",
        "count | \"segments\":[ | \"segments\":[],\"were\":[",
        "count | \"perMinute\":63 | \"perMinute\":\"63\"",
        "count | \"perMinute\":63 | \"perMinute\":0",
        "count | \"rate\": | \"rate\":-",
        "count | \"parts\":[ | \"parts\":{},\"were\":[",
        "count | \"title\": | \"name\":",
        "practice | \"rank\":1 | \"rank\":0",
        "practice | \"stage\":\"all\" | \"stage\":\"everything\"",
        "practice | \"reason\":\" | \"reason\":\"any ",
        "practice | \"said\":true | \"aloud\":true",
        "practice | \"id\":\"none\" | \"id\":\"nothing\"",
        "practice | \"stages\":[ | \"stages\":[{\"id\":\"all\",\"counts\":[]},",
        "practice | \"clean\":5 | \"clean\":5.5",
        "practice | \"tempoAssumed\":false | \"tempoAssumed\":null",
        "practice | \"rarity\": | \"rarity\":9,\"was\":",
        "practice | \"ladder\":[ | \"ladder\":[],\"were\":[",
        "practice | \"seconds\": | \"seconds\":-",
        "check | \"severity\":\"error\" | \"severity\":\"fatal\"",
        "check | \"rule\":\"bar-overfull\" | \"rule\":\"Bar overfull\"",
        "check | \"line\": | \"row\":",
        "check | \"index\":2 | \"index\":-2",
        "check | \"tied\":false | \"tied\":0",
        "check | \"value\":\"quarter\" | \"value\":\"crotchet\"",
        "check | \"value\":\"quarter\", | ``",
        "check | \"tuplet\":\"3:2\" | \"tuplet\":\"3\"",
        "check | \"tuplet\":\"3:2\", | ``",
        "check | \"findings\": | \"problem\":\"gone\",\"findings\":",
        "check | \"words\": | \"text\":"})
    void aSpoiledDocumentIsRefused(String command, String from, String to) throws IOException {
        String document = PublishedSchemas.JSON.readTree(printed(command)).toString();
        assertEquals(List.of(), PublishedSchemas.problems(PublishedSchemas.JSON.readTree(document)));
        refused(document, from, to == null ? "" : to);
    }

    private static String printed(String command) {
        return PRINTED.computeIfAbsent(command, c -> switch (c) {
            case "count" -> run(0, "count", DENSE.toString(), "--bars", "1-6", "--format", "json");
            case "practice" -> run(0, "practice", DENSE.toString(), "--bars", "1-6", "--format", "json");
            default -> run(1, "check", "scores/mistakes.musicxml", "--format", "json");
        });
    }

    /** Fields may be added within a version: whoever holds documents to the schemas is not to refuse later ones. */
    @ParameterizedTest
    @CsvSource({"count", "practice", "check"})
    void aFieldThatIsAddedIsNoFault(String command) throws IOException {
        JsonNode more = PublishedSchemas.JSON.readTree(printed(command).replace("\"index\":", "\"later\":[1],\"index\":"));
        assertEquals(List.of(), PublishedSchemas.problems(more));
        assertFalse(PublishedSchemas.strictly(more).isEmpty(), "ours may have no field that is not published");
    }
}
