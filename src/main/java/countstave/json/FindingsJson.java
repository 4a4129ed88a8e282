package countstave.json;

import countstave.spelling.CheckedFile;
import countstave.spelling.Finding;
import countstave.spelling.FindingsReport;
import countstave.spelling.Suggestion;
import countstave.spelling.respell.Group;
import countstave.spelling.respell.Item;
import countstave.spelling.respell.Symbol;
import java.io.IOException;
import java.util.List;

/** The findings of {@code check} as JSON, {@code countstave-check/1}; docs/spelling.md describes it. */
public final class FindingsJson implements FindingsReport {

    private final JsonText out;

    private boolean first = true;

    /** @param out where the text goes; not closed here */
    public FindingsJson(Appendable out) throws IOException {
        this.out = new JsonText(out);
        this.out.raw("{\"schema\":\"countstave-check/1\",\"files\":[");
    }

    @Override
    public void file(CheckedFile file) throws IOException {
        out.raw(first ? "\n" : ",\n").raw("{\"file\":").text(file.name());
        first = false;
        if (file.problem() != null) {
            out.raw(",\"problem\":").text(file.problem());
        }
        out.raw(",\"findings\":[");
        for (int k = 0; k < file.findings().size(); k++) {
            out.raw(k == 0 ? "\n  " : ",\n  ");
            finding(file.findings().get(k));
        }
        out.raw("]}");
    }

    @Override
    public void end() throws IOException {
        out.raw("]}\n").flush();
    }

    private void finding(Finding finding) throws IOException {
        out.raw("{\"rule\":").text(finding.rule()).raw(",\"severity\":").text(finding.severity().word());
        out.raw(",\"part\":").text(finding.where().partId()).raw(",\"partName\":").text(finding.partName());
        out.raw(",\"index\":" + finding.where().barIndex()).raw(",\"bar\":").text(finding.where().barNumber());
        out.raw(",\"at\":").text(finding.where().at().toString()).raw(",\"beat\":").text(finding.beat());
        if (finding.where().voice() != null) {
            out.raw(",\"voice\":").text(finding.where().voice());
        }
        out.raw(",\"line\":" + finding.line()).raw(",\"sentence\":").text(finding.sentence());
        if (finding.suggestion() != null) {
            out.raw(",\"suggestion\":");
            suggestion(finding.suggestion());
        }
        out.raw("}");
    }

    private void suggestion(Suggestion suggestion) throws IOException {
        out.raw("{\"from\":").text(suggestion.from().toString()).raw(",\"to\":").text(suggestion.to().toString());
        out.raw(",\"words\":").text(suggestion.words()).raw(",\"items\":");
        items(suggestion.items());
        out.raw("}");
    }

    private void items(List<Item> items) throws IOException {
        out.raw("[");
        for (int i = 0; i < items.size(); i++) {
            out.raw(i == 0 ? "" : ",");
            Item item = items.get(i);
            out.raw("{\"at\":").text(item.start().toString()).raw(",\"length\":").text(item.length().toString());
            if (item instanceof Group group) {
                out.raw(",\"tuplet\":").text(group.ratio().toString()).raw(",\"unit\":").text(group.unit().xmlName());
                out.raw(",\"items\":");
                items(group.items());
            } else {
                Symbol symbol = (Symbol) item;
                out.raw(",\"value\":").text(symbol.value().xmlName()).raw(",\"dots\":" + symbol.dots());
                out.raw(",\"rest\":" + symbol.rest()).raw(",\"tied\":" + symbol.tied());
            }
            out.raw("}");
        }
        out.raw("]");
    }
}
