package countstave.json;

import countstave.plain.Phrases;
import countstave.plain.UriText;
import countstave.spelling.CheckedFile;
import countstave.spelling.Finding;
import countstave.spelling.FindingsReport;
import countstave.spelling.Rule;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import java.io.File;
import java.io.IOException;
import java.io.Writer;
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

    private static final String SCHEMA =
            "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

    /** Results, and rules. */
    private static final int LINES = 6;

    /** Name and version of what a finding is known by, see {@link Finding#mark}. */
    private static final String FINGERPRINT = "barContent/v1";

    private final JsonStream out;
    private final Map<String, Integer> ruleIndex = new HashMap<>();

    private final List<CheckedFile> unread = new ArrayList<>();

    /**
     * @param version the tool's version
     * @param out where the text goes; not closed here
     */
    public SarifWriter(List<Rule> rules, String version, Writer out) throws IOException {
        this.out = new JsonStream(out, LINES);
        begin(rules, version);
    }

    private void begin(List<Rule> rules, String version) throws IOException {
        out.object().text("$schema", SCHEMA).text("version", "2.1.0").array("runs").object();
        out.object("tool").object("driver").text("name", "countstave").text("version", version).array("rules");
        for (int i = 0; i < rules.size(); i++) {
            rule(rules.get(i).info());
            ruleIndex.put(rules.get(i).info().id(), i);
        }
        out.endArray().endObject().endObject();
        out.text("columnKind", "utf16CodeUnits").array("results");
    }

    @Override
    public void file(CheckedFile file) throws IOException {
        if (file.problem() != null) {
            unread.add(file);
        }
        String uri = uri(file.name());
        for (Finding finding : file.findings()) {
            result(file, uri, finding, file.known() == null ? null : "new");
        }
        if (file.known() != null) {
            for (Finding finding : file.known()) {
                result(file, uri, finding, "unchanged");
            }
        }
    }

    @Override
    public void end() throws IOException {
        out.endArray();
        invocation();
        out.endObject().endArray().endObject().end();
    }

    private void rule(RuleInfo info) throws IOException {
        out.object().text("id", info.id());
        message("shortDescription", info.summary());
        message("fullDescription", info.summary() + " " + info.reason());
        message("help", (info.remedy() == null ? "" : info.remedy() + " ") + "Found: " + info.example() + ". Not found: " + info.nearMiss() + ". Source: " + info.source()
                + ".");
        out.object("defaultConfiguration").text("level", level(info.severity())).endObject();
        out.object("properties").array("tags").text(info.about().word()).endArray().endObject();
        out.endObject();
    }

    /** What could not be read is a notification of the run, not a result. */
    private void invocation() throws IOException {
        out.array("invocations").object().flag("executionSuccessful", unread.isEmpty());
        out.array("toolExecutionNotifications");
        for (CheckedFile file : unread) {
            out.object().text("level", "error");
            message("message", file.problem());
            out.array("locations").object().object("physicalLocation");
            artifact(uri(file.name()));
            out.endObject().endObject().endArray().endObject();
        }
        out.endArray().endObject().endArray();
    }

    /**
     * @param uri the file's
     * @param state what the finding is to a baseline; null where there is none
     */
    private void result(CheckedFile file, String uri, Finding finding, String state) throws IOException {
        String instead = finding.suggestion() != null ? " Write: " + finding.suggestion().words(Phrases.ENGLISH) + "."
                : finding.remedy(Phrases.ENGLISH) != null ? " " + finding.remedy(Phrases.ENGLISH) : "";
        String text = finding.sentence(Phrases.ENGLISH) + instead;
        String place = finding.place(Phrases.ENGLISH);
        out.object().text("ruleId", finding.rule()).number("ruleIndex", ruleIndex.get(finding.rule()))
                .text("level", level(finding.severity()));
        message("message", place + ": " + text);
        out.array("locations").object().object("physicalLocation");
        artifact(uri);
        // a line means nothing inside a compressed file
        if (finding.line() > 0 && !file.name().toLowerCase(Locale.ROOT).endsWith(".mxl")) {
            out.object("region").number("startLine", finding.line()).endObject();
        }
        out.endObject();
        out.array("logicalLocations").object().text("fullyQualifiedName", place).text("kind", "element").endObject()
                .endArray();
        out.endObject().endArray();
        out.object("partialFingerprints").text(FINGERPRINT, finding.mark()).endObject();
        if (state != null) {
            out.text("baselineState", state);
        }
        out.object("properties").text("part", finding.where().partId()).text("bar", finding.where().barNumber())
                .text("at", finding.where().at().toString()).endObject();
        out.endObject();
    }

    private void message(String name, String text) throws IOException {
        out.object(name).text("text", text).endObject();
    }

    private void artifact(String uri) throws IOException {
        out.object("artifactLocation").text("uri", uri).endObject();
    }

    /** A relative path stays relative, with all that a URI cannot hold percent-encoded: the very bytes of its name in UTF-8. */
    static String uri(String name) {
        boolean drive = name.matches("[A-Za-z]:[\\\\/].*");
        String path = drive || File.separatorChar == '\\' ? name.replace('\\', '/') : name;
        return (drive ? "file:///" + path.substring(0, 2) : path.startsWith("/") ? "file://" : "")
                + UriText.ofPath(path.substring(drive ? 2 : 0));
    }

    private static String level(Severity severity) {
        return switch (severity) {
            case ERROR -> "error";
            case WARNING -> "warning";
            case HINT -> "note";
        };
    }
}
