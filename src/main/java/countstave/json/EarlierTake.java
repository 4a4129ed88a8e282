package countstave.json;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import countstave.listen.Earlier;
import countstave.score.ScoreException;
import countstave.time.Offset;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;

/** Reads what {@link ListenJson} has written of an earlier take; fields that are not known are passed over. */
public final class EarlierTake {

    private static final JsonFactory FACTORY = new JsonFactory();
    private static final double MS = 1000;

    private String schema = "";
    private String name = "the earlier take";
    private double spread;
    private double share;
    private final Map<Earlier.Begin, Earlier.Run> runs = new HashMap<>();

    private EarlierTake() {
    }

    /**
     * @param file what it is called in messages
     * @throws ScoreException in one line if it is nothing of the kind
     */
    public static Earlier read(String text, String file) {
        EarlierTake take = new EarlierTake();
        try (JsonParser in = FACTORY.createParser(text)) {
            if (in.nextToken() == JsonToken.START_OBJECT) {
                take.document(in);
            }
        } catch (IOException | RuntimeException e) {
            throw wrong(file, e);
        }
        if (!take.schema.equals(ListenJson.SCHEMA)) {
            throw wrong(file, null);
        }
        return new Earlier(take.name, take.spread, take.share, Map.copyOf(take.runs));
    }

    private static ScoreException wrong(String file, Exception fault) {
        return new ScoreException(file + " is nothing that --format json has written of a take; write it anew with"
                + " countstave listen … --format json", fault);
    }

    private void document(JsonParser in) throws IOException {
        while (in.nextToken() == JsonToken.FIELD_NAME) {
            String field = in.currentName();
            in.nextToken();
            switch (field) {
                case "schema" -> schema = in.getValueAsString("");
                case "take" -> name = (String) fields(in).getOrDefault("name", name);
                case "summary" -> {
                    Map<String, Object> summary = fields(in);
                    spread = number(summary, "spreadMs") / MS;
                    share = number(summary, "share");
                }
                case "runs" -> {
                    while (in.nextToken() == JsonToken.START_OBJECT) {
                        run(fields(in));
                    }
                }
                default -> in.skipChildren();
            }
        }
    }

    private void run(Map<String, Object> run) {
        Earlier.Begin begin = new Earlier.Begin((int) number(run, "index"), Offset.parse((String) run.get("at")),
                (String) run.get("unit"));
        runs.put(begin, new Earlier.Run(number(run, "startMs") / MS, Boolean.TRUE.equals(run.get("startOff")), number(run, "pace"),
                Boolean.TRUE.equals(run.get("even"))));
    }

    private static double number(Map<String, Object> fields, String name) {
        return fields.get(name) instanceof Double number ? number : 0;
    }

    /** The plain fields of the object that has just begun. */
    private static Map<String, Object> fields(JsonParser in) throws IOException {
        Map<String, Object> fields = new HashMap<>();
        while (in.nextToken() == JsonToken.FIELD_NAME) {
            String field = in.currentName();
            JsonToken value = in.nextToken();
            if (value.isNumeric()) {
                fields.put(field, in.getDoubleValue());
            } else if (value.isBoolean()) {
                fields.put(field, in.getBooleanValue());
            } else if (value == JsonToken.VALUE_STRING) {
                fields.put(field, in.getText());
            } else {
                in.skipChildren();
            }
        }
        return fields;
    }
}
