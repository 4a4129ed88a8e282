package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.testing.JavaProcess;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The same score gives the same bytes in every process, also where objects are hashed by where they happen to lie. */
class SameBytesTest {

    /** A process in which all objects without a hash of their own have the same. */
    private static Process allAlike(String... words) throws IOException {
        List<String> command = JavaProcess.command("-XX:+UnlockExperimentalVMOptions", "-XX:hashCode=2");
        command.add("countstave.Main");
        command.addAll(List.of(words));
        return new ProcessBuilder(command).redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD).start();
    }

    private static String[] charts(Path score, Path folder) {
        return new String[] {"annotate", "scores/song.musicxml", "scores/dense.musicxml", score.toString(), "-o", folder.toString(), "--as", "chart"};
    }

    /** Twelve short bars, in each a syllable that is sung on over two more notes. */
    private static String sung() {
        StringBuilder xml = new StringBuilder("<score-partwise version=\"4.0\"><part-list><score-part id=\"P1\"><part-name>"
                + "Voice</part-name></score-part></part-list><part id=\"P1\">");
        for (int bar = 1; bar <= 12; bar++) {
            xml.append("<measure number=\"").append(bar).append("\">").append(bar > 1 ? "" : "<attributes><divisions>1"
                    + "</divisions><time><beats>3</beats><beat-type>4</beat-type></time></attributes>");
            for (int beat = 0; beat < 3; beat++) {
                xml.append("<note><pitch><step>C</step><octave>5</octave></pitch><duration>1</duration><voice>1</voice><type>"
                        + "quarter</type>").append(beat > 0 ? "" : "<lyric><text>oh</text><extend/></lyric>").append("</note>");
            }
            xml.append("</measure>");
        }
        return xml.append("</part></score-partwise>").toString();
    }

    @Test
    void chartsOfTwoProcesses(@TempDir Path folder) throws IOException, InterruptedException {
        Path sung = Files.writeString(folder.resolve("sung.musicxml"), sung());
        Process process = allAlike(charts(sung, folder.resolve("one")));
        assertEquals(0, Run.of(charts(sung, folder.resolve("two"))).code());
        assertEquals(0, process.waitFor());
        TreeMap<String, String> one = Run.tree(folder.resolve("one"));
        TreeMap<String, String> two = Run.tree(folder.resolve("two"));
        assertEquals(one.keySet(), two.keySet());
        one.forEach((name, bytes) -> assertEquals(bytes.hashCode(), two.get(name).hashCode(), name));
    }
}
