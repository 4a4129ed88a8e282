package countstave.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.MinimalPrettyPrinter;
import java.io.IOException;

/** A layout for people with line tools: the values of the outer arrays have a line each, all else stands without a blank. */
final class Lines extends MinimalPrettyPrinter {

    private static final long serialVersionUID = 1L;

    private final int deepest;

    /** @param deepest how deep an array may lie whose values get a line each; the document itself lies at 1 */
    Lines(int deepest) {
        this.deepest = deepest;
    }

    @Override
    public void beforeArrayValues(JsonGenerator out) throws IOException {
        line(out);
    }

    @Override
    public void writeArrayValueSeparator(JsonGenerator out) throws IOException {
        out.writeRaw(',');
        line(out);
    }

    private void line(JsonGenerator out) throws IOException {
        int depth = out.getOutputContext().getNestingDepth();
        if (depth <= deepest) {
            out.writeRaw('\n');
            for (int i = 0; i < depth; i++) {
                out.writeRaw(' ');
            }
        }
    }
}
