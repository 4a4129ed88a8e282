package countstave.json;

import countstave.plain.Phrases;
import countstave.spelling.CheckedFile;
import countstave.spelling.Finding;
import countstave.spelling.FindingsReport;
import countstave.spelling.Suggestion;
import countstave.spelling.respell.Group;
import countstave.spelling.respell.Item;
import countstave.spelling.respell.Symbol;
import java.io.IOException;
import java.io.Writer;
import java.util.List;

/** The findings of {@code check} as JSON, {@code countstave-check/1}; docs/spelling.md describes it. */
public final class FindingsJson implements FindingsReport {

    /** Files and findings. */
    private static final int LINES = 4;

    private final JsonStream out;

    /** @param out where the text goes; not closed here */
    public FindingsJson(Writer out) throws IOException {
        this.out = new JsonStream(out, LINES);
        this.out.object().text("schema", "countstave-check/1").array("files");
    }

    @Override
    public void file(CheckedFile file) throws IOException {
        out.object().text("file", file.name());
        if (file.problem() != null) {
            out.text("problem", file.problem());
        }
        out.array("findings");
        for (Finding finding : file.findings()) {
            finding(finding);
        }
        out.endArray().endObject();
    }

    @Override
    public void end() throws IOException {
        out.endArray().endObject().end();
    }

    private void finding(Finding finding) throws IOException {
        out.object().text("rule", finding.rule()).text("about", finding.info().about().word()).text("severity", finding.severity().word())
                .text("part", finding.where().partId()).text("partName", finding.partName())
                .number("index", finding.where().barIndex()).text("bar", finding.where().barNumber())
                .text("at", finding.where().at().toString()).text("beat", finding.beat());
        if (finding.where().voice() != null) {
            out.text("voice", finding.where().voice());
        }
        out.number("line", finding.line()).text("sentence", finding.sentence(Phrases.ENGLISH)).text("mark", finding.mark());
        if (finding.remedy(Phrases.ENGLISH) != null) {
            out.text("remedy", finding.remedy(Phrases.ENGLISH));
        }
        if (finding.suggestion() != null) {
            suggestion(finding.suggestion());
        }
        out.endObject();
    }

    private void suggestion(Suggestion suggestion) throws IOException {
        out.object("suggestion").text("from", suggestion.from().toString()).text("to", suggestion.to().toString())
                .text("words", suggestion.words(Phrases.ENGLISH));
        items(suggestion.items());
        out.endObject();
    }

    private void items(List<Item> items) throws IOException {
        out.array("items");
        for (Item item : items) {
            out.object().text("at", item.start().toString()).text("length", item.length().toString());
            if (item instanceof Group group) {
                out.text("tuplet", group.ratio().toString()).text("unit", group.unit().xmlName());
                items(group.items());
            } else {
                Symbol symbol = (Symbol) item;
                out.text("value", symbol.value().xmlName()).number("dots", symbol.dots())
                        .flag("rest", symbol.rest()).flag("tied", symbol.tied());
            }
            out.endObject();
        }
        out.endArray();
    }
}
