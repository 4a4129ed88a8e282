package countstave.json;

import countstave.spelling.CheckedFile;
import countstave.spelling.Finding;
import countstave.spelling.FindingsReport;
import countstave.spelling.Rule;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The findings of {@code check} in the Static Analysis Results Interchange Format, SARIF 2.1.0 (OASIS standard), which
 * code hosts and editors show beside the file.
 */
public final class SarifWriter implements FindingsReport {

    private final JsonText out;
    private final Map<String, Integer> ruleIndex = new HashMap<>();

    private final List<CheckedFile> unread = new ArrayList<>();
    private boolean first = true;

    /**
     * @param version the tool's version
     * @param out where the text goes; not closed here
     */
    public SarifWriter(List<Rule> rules, String version, Appendable out) throws IOException {
        this.out = new JsonText(out);
        begin(rules, version);
    }

    private void begin(List<Rule> rules, String version) throws IOException {
        out.raw("{\"$schema\":\"https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json\",");
        out.raw("\n\"version\":\"2.1.0\",\"runs\":[{");
        out.raw("\n\"tool\":{\"driver\":{\"name\":\"countstave\",\"version\":").text(version).raw(",\"rules\":[");
        for (int i = 0; i < rules.size(); i++) {
            out.raw(i == 0 ? "\n  " : ",\n  ");
            rule(rules.get(i).info());
            ruleIndex.put(rules.get(i).info().id(), i);
        }
        out.raw("]}},");
        out.raw("\n\"columnKind\":\"utf16CodeUnits\",\"results\":[");
    }

    @Override
    public void file(CheckedFile file) throws IOException {
        if (file.problem() != null) {
            unread.add(file);
        }
        for (Finding finding : file.findings()) {
            out.raw(first ? "\n  " : ",\n  ");
            result(file, finding);
            first = false;
        }
    }

    @Override
    public void end() throws IOException {
        out.raw("],");
        invocation();
        out.raw("}]}\n").flush();
    }

    private void rule(RuleInfo info) throws IOException {
        out.raw("{\"id\":").text(info.id());
        out.raw(",\"shortDescription\":{\"text\":").text(info.summary());
        out.raw("},\"fullDescription\":{\"text\":").text(info.summary() + " " + info.reason());
        out.raw("},\"help\":{\"text\":").text("Found: " + info.example() + ". Not found: " + info.nearMiss() + ". Source: "
                + info.source() + ".");
        out.raw("},\"defaultConfiguration\":{\"level\":").text(level(info.severity())).raw("}}");
    }

    /** What could not be read is a notification of the run, not a result. */
    private void invocation() throws IOException {
        out.raw("\n\"invocations\":[{\"executionSuccessful\":" + unread.isEmpty()).raw(",\"toolExecutionNotifications\":[");
        for (int i = 0; i < unread.size(); i++) {
            out.raw(i == 0 ? "\n  " : ",\n  ").raw("{\"level\":\"error\",\"message\":{\"text\":");
            out.text(unread.get(i).problem()).raw("},\"locations\":[{\"physicalLocation\":{");
            artifact(unread.get(i).name());
            out.raw("}}]}");
        }
        out.raw("]}]");
    }

    private void result(CheckedFile file, Finding finding) throws IOException {
        String text = finding.sentence()
                + (finding.suggestion() == null ? "" : " Write: " + finding.suggestion().words() + ".");
        String place = finding.place();
        out.raw("{\"ruleId\":").text(finding.rule()).raw(",\"ruleIndex\":" + ruleIndex.get(finding.rule()));
        out.raw(",\"level\":").text(level(finding.severity())).raw(",\"message\":{\"text\":").text(place + ": " + text);
        out.raw("},\"locations\":[{\"physicalLocation\":{");
        artifact(file.name());
        // a line means nothing inside a compressed file
        if (finding.line() > 0 && !file.name().toLowerCase(Locale.ROOT).endsWith(".mxl")) {
            out.raw(",\"region\":{\"startLine\":" + finding.line()).raw("}");
        }
        out.raw("},\"logicalLocations\":[{\"fullyQualifiedName\":").text(place).raw(",\"kind\":\"element\"}]}]");
        out.raw(",\"properties\":{\"part\":").text(finding.where().partId()).raw(",\"bar\":").text(finding.where().barNumber());
        out.raw(",\"at\":").text(finding.where().at().toString()).raw("}}");
    }

    private void artifact(String name) throws IOException {
        out.raw("\"artifactLocation\":{\"uri\":").text(uri(name)).raw("}");
    }

    /** A relative path stays relative, with what a URI cannot hold percent-encoded. */
    static String uri(String name) {
        String path = name.replace('\\', '/');
        try {
            boolean absolute = path.startsWith("/");
            // a colon in the first step of a relative path would read as a scheme
            String safe = absolute || path.indexOf(':') < 0 ? path : "./" + path;
            return new URI(absolute ? "file" : null, absolute ? "" : null, safe, null).toASCIIString();
        } catch (URISyntaxException e) {
            return "unnamed";
        }
    }

    private static String level(Severity severity) {
        return switch (severity) {
            case ERROR -> "error";
            case WARNING -> "warning";
            case HINT -> "note";
        };
    }
}
