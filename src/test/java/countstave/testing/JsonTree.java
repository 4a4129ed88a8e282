package countstave.testing;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** JSON texts as plain values, in the order of their fields; nothing may be there twice, or behind the document. */
public final class JsonTree {

    private static final JsonMapper STRICT = JsonMapper.builder().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS).enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();

    private JsonTree() {
    }

    /** Objects become maps, arrays lists, numbers BigDecimal. */
    public static Object read(String text) {
        try {
            return value(STRICT.readTree(text));
        } catch (JsonProcessingException e) {
            throw new AssertionError("no JSON: " + e.getMessage(), e);
        }
    }

    private static Object value(JsonNode node) {
        if (node.isObject()) {
            Map<String, Object> object = new LinkedHashMap<>();
            node.properties().forEach(field -> object.put(field.getKey(), value(field.getValue())));
            return object;
        }
        if (node.isArray()) {
            List<Object> array = new ArrayList<>();
            node.forEach(element -> array.add(value(element)));
            return array;
        }
        if (node.isNumber()) {
            return node.decimalValue();
        }
        return node.isBoolean() ? (Object) node.booleanValue() : node.isNull() ? null : node.textValue();
    }
}
