package countstave.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.cli.Countstave;
import countstave.plain.Phrases;
import countstave.score.Fact;
import countstave.spelling.CheckedFile;
import countstave.spelling.Finding;
import countstave.spelling.Severity;
import countstave.testing.Rules;
import countstave.testing.Snippets;
import countstave.time.Offset;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Makes what the pages show, by running the commands on the scores that the pages speak of. */
final class DocsExamples {

    private final Path folder;

    /** @param folder an empty one for scores and outputs */
    DocsExamples(Path folder) {
        this.folder = folder;
    }

    /** What a run prints: on the standard output, and on the error output. */
    record Printed(int code, String out, String err) {
    }

    static Printed run(String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Countstave.run(args, new ByteArrayInputStream(new byte[0]),
                new PrintStream(out, true, StandardCharsets.UTF_8), new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Printed(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private static String printed(String... args) {
        Printed run = run(args);
        assertEquals(0, run.code(), run.err());
        return run.out();
    }

    /** The pages leave out the heading of the part, and begin with a bar. */
    private static String fromBar(String text, String bar) {
        return text.substring(text.indexOf("bar " + bar + " "));
    }

    static String aTake() {
        return printed("listen", "scores/dense.musicxml", "scores/dense-take.mid", "--bars", "3");
    }

    private String score(String name, String xml) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, xml).toString();
    }

    static String partsOfAScore() {
        return printed("parts", "scores/meters.musicxml");
    }

    String barOfReadme() {
        return fromBar(printed("count", "scores/dense.musicxml", "--bars", "3"), "3");
    }

    String twoBars() throws IOException {
        return fromBar(printed("count", score("snare.musicxml", Snippets.in("4/4").percussion().tempo(70)
                .bar("16 16 16 16 8 8 4 16 16 16 16")
                .bar("16 16 16 16 3:2[8 8 8] 5:4[16 16 16 16 16] 6:4[16 16 16 16 16 16]").xml())), "1");
    }

    String voicesAndFeltNotes() throws IOException {
        String hands = "16 16 16 16 16 16 16 16";
        return fromBar(printed("count", score("kit.musicxml", Snippets.in("2/4").percussion().tempo(152)
                .bar(hands + " / 4 r4").tempo(80).bar(hands + " / 3:2[4 4 4]").xml())), "1");
    }

    String document() throws IOException {
        String xml = Snippets.in("2/4").tempo(96).bar("3:2[8 8 8] r8 8").xml().replace(">Drums<", ">Snare<")
                .replace("  <part-list>", "  <work><work-title>Demo</work-title></work>\n  <part-list>");
        return printed("count", score("demo.musicxml", xml), "--format", "json");
    }

    /** The two segments of one bar: 16ths stay straight, the pair after them swings. */
    String segments() throws IOException {
        String json = printed("count", score("swung.musicxml", Snippets.rhythm("2/4", "16 16 8 8 8")), "--tempo", "152",
                "--swing", "2:1", "--format", "json");
        String segments = json.substring(json.indexOf("\"segments\":[") + 12, json.lastIndexOf("]}]}]}"));
        return segments.replace("},{\"start\"", "}\n{\"start\"") + "\n";
    }

    /** Quartet whose exporter writes beams that only go on: 2,436 of them, one in each bar of the first part. */
    String findingsThatRepeat() throws IOException {
        String[] names = {"Violin I", "Violin II", "Viola", "Violoncello"};
        int[] voices = {1, 2, 2, 1};
        int[] bars = {432, 432, 432, 276};
        StringBuilder xml = new StringBuilder("<score-partwise version=\"4.0\"><part-list>");
        for (int p = 0; p < names.length; p++) {
            xml.append("<score-part id=\"P").append(p).append("\"><part-name>").append(names[p]).append("</part-name></score-part>");
        }
        xml.append("</part-list>");
        for (int p = 0; p < names.length; p++) {
            xml.append("<part id=\"P").append(p).append("\">");
            for (int bar = 1; bar <= 432; bar++) {
                xml.append("<measure number=\"").append(bar).append("\">").append(bar > 1 ? "" : "<attributes><divisions>2"
                        + "</divisions><time><beats>2</beats><beat-type>4</beat-type></time></attributes>");
                for (int voice = 1; voice <= voices[p]; voice++) {
                    xml.append(voice > 1 ? "<backup><duration>4</duration></backup>" : "");
                    xml.append(("<note><pitch><step>C</step><octave>5</octave></pitch><duration>1</duration><voice>" + voice
                            + "</voice><type>eighth</type>" + (bar <= bars[p] ? "<beam number=\"1\">continue</beam>" : "")
                            + "</note>").repeat(4));
                }
                xml.append("</measure>");
            }
            xml.append("</part>");
        }
        Printed run = run("check", score("quartet.musicxml", xml + "</score-partwise>"), "--rule", "beam-unmatched");
        String out = run.out();
        return out.substring(out.indexOf("  Violin I, bar 3"), out.indexOf("\n\n") + 1);
    }

    /** The last line of a long list: 23 of 323 files, three rules. */
    static String summaryOfFindings() throws IOException {
        StringBuilder out = new StringBuilder();
        FindingsWriter writer = new FindingsWriter(out, false, Phrases.ENGLISH);
        for (int file = 0; file < 323; file++) {
            List<Finding> found = new ArrayList<>();
            for (int k = 0; file < 23 && k < (file == 0 ? 2349 - 22 : 1); k++) {
                found.add(finding(file == 1 ? "tie-pitch" : "tie-loose", Severity.ERROR, k));
            }
            for (int k = 0; file == 2 && k < 12; k++) {
                found.add(finding("tuplet-reducible", Severity.HINT, k));
            }
            writer.file(new CheckedFile(file + ".musicxml", found, null));
        }
        writer.end();
        return out.substring(out.lastIndexOf("\n", out.length() - 2) + 1);
    }

    private static Finding finding(String rule, Severity severity, int bar) {
        return new Finding(Rules.named(rule), severity, new Fact.Place("P1", bar, String.valueOf(bar + 1), "1", Offset.ZERO),
                "Violin", "1", 1, phrases -> "So.", null, "");
    }

    /** What the error output says in the end, without the time that it took. */
    String summaryOfMany() throws IOException {
        String bar = Snippets.rhythm("4/4", "4 4 4 4");
        for (int k = 0; k < 176; k++) {
            score("many/" + k + ".musicxml", bar);
        }
        score("many/broken.musicxml", "no score");
        score("many/settings.xml", "<settings/>");
        score("many/pom.xml", "<project/>");
        String err = run("count", folder.resolve("many").toString()).err();
        return err.substring(err.lastIndexOf("\n", err.length() - 2) + 1);
    }

    /** One that is counted and one that cannot be: the document of the first is left out. */
    String documentOfMany() throws IOException {
        score("two/parts/a.musicxml", Snippets.rhythm("4/4", "4 4 4 4"));
        score("two/parts/b.musicxml", Snippets.rhythm("4/4", "R"));
        String root = folder.resolve("two").toString().replace('\\', '/') + "/";
        String out = run("count", root + "parts", "--format", "json").out().replace(root, "");
        int from = out.indexOf("\"countstave/2\",") + "\"countstave/2\",".length();
        return out.substring(0, from) + " …}" + out.substring(out.indexOf("\n},\n  {\"file\""));
    }

    String mistakes() {
        Printed run = run("check", "scores/mistakes.musicxml");
        assertEquals(1, run.code());
        return run.out();
    }

    String rules() {
        return printed("check", "--rules");
    }

    /** The settings of the page are followed. */
    String withSettings(String settings) throws IOException {
        Printed run = run("check", "scores/mistakes.musicxml", "--settings", score("house.rules", settings));
        assertEquals(1, run.code(), run.err());
        return run.out();
    }

    /** What a beat of so many parts is said as, in the system of the page. */
    String inSystem(String system, String rhythm) throws IOException {
        String out = printed("count", score("a.musicxml", Snippets.rhythm("2/4", rhythm)), "--tempo", "50",
                "--system", score("my.system", system));
        return out.strip().substring(out.strip().lastIndexOf('\n') + 1);
    }

    String faultySystem() throws IOException {
        String file = score("my.system", "# three words for four parts\nbased on = numbers\n\n4 = N e &\n");
        Printed run = run("count", "scores/groove.musicxml", "--system", file);
        assertEquals(2, run.code());
        return run.err().replace(file, "my.system");
    }
}
