package countstave.chart.font;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.NoSuchElementException;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The table of measures against the font's metadata as they are published. After a change of {@code smufl-names.txt} or of
 * the font, {@code mvn -q test -Dtest=SignMeasuresTest -Dmeasures.write=true} writes it anew.
 */
class SignMeasuresTest {

    private static final Path TABLE = Path.of("src/main/resources/countstave/fonts/smufl-measures.txt");
    private static final Path METADATA = Path.of("src/test/resources/bravura/metadata.json");

    private static final String HEAD = """
            # Lengths in staff spaces, out of the SMuFL metadata of the music font; see README.md.
            # Copyright (c) 2019, Steinberg Media Technologies GmbH; SIL Open Font License 1.1 (bravura/LICENSE.txt).
            """;

    /** In the order of the names. */
    private static String table() throws IOException {
        JsonNode metadata = JsonMapper.builder().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS).build()
                .readTree(Files.readString(METADATA));
        StringBuilder table = new StringBuilder(HEAD);
        TreeMap<String, JsonNode> defaults = new TreeMap<>();
        metadata.get("engravingDefaults").properties().forEach(e -> defaults.put(e.getKey(), e.getValue()));
        defaults.forEach((name, value) -> table.append(value.isNumber() ? "default " + name + " " + value + "\n" : ""));
        for (String name : MusicFont.bravura().names()) {
            table.append("sign ").append(name);
            JsonNode advance = metadata.get("glyphAdvanceWidths").get(name);
            table.append(advance == null ? "" : " advance " + advance);
            JsonNode box = metadata.get("glyphBBoxes").get(name);
            table.append(box == null ? "" : " box" + point(box.get("bBoxSW")) + point(box.get("bBoxNE")));
            TreeMap<String, JsonNode> anchors = new TreeMap<>();
            metadata.get("glyphsWithAnchors").path(name).properties().forEach(e -> anchors.put(e.getKey(), e.getValue()));
            anchors.forEach((anchor, at) -> table.append(' ').append(anchor).append(point(at)));
            table.append('\n');
        }
        return table.toString();
    }

    private static String point(JsonNode pair) {
        return " " + pair.get(0) + " " + pair.get(1);
    }

    @Test
    void theTableIsWhatThePublishedFileSays() throws IOException {
        String table = table();
        if (Boolean.getBoolean("measures.write")) {
            Files.writeString(TABLE, table);
        }
        assertEquals(table, Files.readString(TABLE));
        assertTrue(table.lines().count() > 150, "most of the signs are drawn somewhere");
    }

    @ParameterizedTest
    @ValueSource(strings = {"sign noteheadBlack advance", "default stemThickness thick", "sign", "sign segno box 0 0 1"})
    void aDamagedTableIsNoticed(String line) {
        RuntimeException seen = assertThrows(RuntimeException.class, () -> new SignMeasures(line));
        assertTrue(seen instanceof NoSuchElementException || seen instanceof NumberFormatException, seen.toString());
    }
}
