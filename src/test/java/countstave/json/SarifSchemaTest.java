package countstave.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import countstave.musicxml.ReadOptions;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.spelling.CheckedFile;
import countstave.spelling.Finding;
import countstave.spelling.RuleSettings;
import countstave.spelling.SpellingCheck;
import countstave.spelling.rules.AllRules;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The SARIF output against the JSON schema of SARIF 2.1.0 (OASIS standard), and what the schema cannot say. */
class SarifSchemaTest {

    private static final Path MISTAKES = Path.of("scores/mistakes.musicxml");
    private static final ObjectMapper JSON = new ObjectMapper();

    private static List<Finding> mistakes() throws IOException {
        return SpellingCheck.check(ScoreReader.read(ScoreFile.of("mistakes.musicxml", Files.readAllBytes(MISTAKES)),
                ReadOptions.DEFAULT), AllRules.list(), RuleSettings.DEFAULT);
    }

    private static String sarif(CheckedFile... files) throws IOException {
        StringWriter out = new StringWriter();
        SarifWriter writer = new SarifWriter(AllRules.list(), "1.0", out);
        for (CheckedFile file : files) {
            writer.file(file);
        }
        writer.end();
        return out.toString();
    }

    private static Set<String> problems(String text) throws IOException {
        try (InputStream in = SarifSchemaTest.class.getResourceAsStream("/sarif/sarif-2.1.0-rtm.5.json")) {
            JsonSchema schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V4).getSchema(in);
            return schema.validate(JSON.readTree(text)).stream().map(ValidationMessage::getMessage)
                    .collect(Collectors.toSet());
        }
    }

    @Test
    void isValidWithFindingsWithoutAndWithUnreadFiles() throws IOException {
        assertEquals(Set.of(), problems(sarif()));
        assertEquals(Set.of(), problems(sarif(new CheckedFile("a.musicxml", List.of(), null))));
        assertEquals(Set.of(), problems(sarif(new CheckedFile("parts/2. Drums & \"bass\" é.musicxml", mistakes(), null),
                new CheckedFile("C:\\parts\\a b.mxl", mistakes(), null), new CheckedFile("/tmp/x.musicxml", mistakes(), null),
                new CheckedFile("gone.musicxml", List.of(), "this file cannot be read\u0007"))));
    }

    /** A validator that finds nothing wrong with anything would prove nothing. */
    @Test
    void theSchemaSeesWhatIsWrong() throws IOException {
        String good = sarif(new CheckedFile("a.musicxml", mistakes(), null));
        assertFalse(problems(good.replaceFirst("\"level\":\"error\",\"message\"", "\"level\":\"loud\",\"message\"")).isEmpty());
        assertFalse(problems(good.replaceFirst("\"message\":\\{\"text\"", "\"message\":{\"words\"")).isEmpty());
        assertFalse(problems(good.replaceFirst("\"startLine\":\\d+", "\"startLine\":0")).isEmpty());
        assertFalse(problems(good.replace("\"version\":\"2.1.0\"", "\"version\":\"2.0\"")).isEmpty());
    }

    /** SARIF 2.1.0, 3.27.5 and 3.27.6: ruleId is the id of the rule at ruleIndex; 3.30.5: lines are counted from 1. */
    @Test
    void resultsPointAtTheirRuleAndTheirLine() throws IOException {
        JsonNode run = JSON.readTree(sarif(new CheckedFile("a.musicxml", mistakes(), null))).get("runs").get(0);
        JsonNode rules = run.get("tool").get("driver").get("rules");
        assertEquals(AllRules.list().size(), rules.size());
        assertEquals(mistakes().size(), run.get("results").size());
        List<String> lines = Files.readAllLines(MISTAKES);
        for (JsonNode result : run.get("results")) {
            String rule = result.get("ruleId").asText();
            assertEquals(rule, rules.get(result.get("ruleIndex").asInt()).get("id").asText());
            int line = result.get("locations").get(0).get("physicalLocation").get("region").get("startLine").asInt();
            assertTrue(lines.get(line - 1).matches("\\s*<(note|measure).*"), rule + " at line " + line);
        }
    }
}
