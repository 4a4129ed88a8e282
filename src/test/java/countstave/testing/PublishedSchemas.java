package countstave.testing;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The JSON Schemas of {@code docs/schemas}, as everybody else reads them; and closed, without the fields that a later
 * writer might add: so that ours cannot have a field that is not published.
 */
public final class PublishedSchemas {

    public static final Path FOLDER = Path.of("docs/schemas");
    public static final ObjectMapper JSON = new ObjectMapper();

    private static final JsonSchemaFactory FACTORY = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012);
    /** Compiled once; a validator may be used by several threads. */
    private static final Map<String, JsonSchema> OPEN = new ConcurrentHashMap<>();
    private static final Map<String, JsonSchema> CLOSED = new ConcurrentHashMap<>();

    private PublishedSchemas() {
    }

    /** The file of a contract: {@code countstave/2} is in {@code countstave-2.schema.json}. */
    public static Path file(String contract) {
        return FOLDER.resolve(contract.replace('/', '-') + ".schema.json");
    }

    /** What is wrong with a document by the schema of the contract it names; nothing if it is right. */
    public static List<String> problems(JsonNode document) {
        return problems(OPEN, document, false);
    }

    /** As {@link #problems}, and a field that is not published is wrong too. */
    public static List<String> strictly(JsonNode document) {
        return problems(CLOSED, document, true);
    }

    public static List<String> strictly(String document) throws IOException {
        return strictly(JSON.readTree(document));
    }

    private static List<String> problems(Map<String, JsonSchema> compiled, JsonNode document, boolean closed) {
        JsonSchema schema = compiled.computeIfAbsent(document.path("schema").asText(), c -> compile(c, closed));
        return schema.validate(document).stream().map(ValidationMessage::getMessage).sorted().toList();
    }

    private static JsonSchema compile(String contract, boolean closed) {
        try {
            JsonNode schema = JSON.readTree(Files.readString(file(contract)));
            if (closed) {
                close(schema);
            }
            // references to schemas beside it are looked up where it lies
            SchemaLocation place = SchemaLocation.of(file(contract).toUri().toString() + (closed ? "?closed" : ""));
            return FACTORY.getSchema(place, schema, SchemaValidatorsConfig.builder().build());
        } catch (IOException e) {
            throw new UncheckedIOException("no schema is published for '" + contract + "'", e);
        }
    }

    /** Every object that is described gets no further fields; the halves of a condition describe none. */
    private static void close(JsonNode schema) {
        if (schema instanceof ObjectNode object && object.has("properties") && object.has("required") && !object.has("if")) {
            object.put("additionalProperties", false);
        }
        schema.forEach(PublishedSchemas::close);
    }
}
