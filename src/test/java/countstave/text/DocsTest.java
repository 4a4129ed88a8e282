package countstave.text;

import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.TestPlans;
import countstave.json.JsonWriter;
import countstave.score.Tempo;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The examples of the pages are what the writers write. */
class DocsTest {

    @Test
    void theExampleOfCount() throws IOException {
        StringBuilder out = new StringBuilder();
        new TextWriter(out, TextOptions.DEFAULT).part(TextWriterTest.example().counts("numbers"));
        String bars = out.substring(out.indexOf("bar 1"));
        assertTrue(Files.readString(Path.of("docs/count.md")).contains("```\n" + bars + "```\n"), bars);
    }

    @Test
    void theExampleOfVoicesAndFeltNotes() throws IOException {
        String[] sixteenths = {"0/1", "1/16", "1/8", "3/16", "1/4", "5/16", "3/8", "7/16"};
        TestPlans plans = TestPlans.part("Drums").tempo(Tempo.of(152));
        plans.bar("2/4", "1/4").felt().voice(1, "1", sixteenths).voice(1, "2", "0/1").fill("1/8").tempo(Tempo.of(80))
                .bar("2/4", "1/4").felt().voice(1, "1", sixteenths).voice(1, "2", "0/1", "1/6", "1/3").fill("1/16");
        StringBuilder out = new StringBuilder();
        new TextWriter(out, TextOptions.DEFAULT).part(plans.counts("numbers"));
        String bars = out.substring(out.indexOf("bar 1"));
        assertTrue(Files.readString(Path.of("docs/count.md")).contains("```\n" + bars + "```\n"), bars);
    }

    @Test
    void theExampleOfTheContract() throws IOException {
        TestPlans plans = TestPlans.part("Snare").tempo(Tempo.of(96));
        plans.bar("2/4", "1/4").attacks("0/1", "1/12", "1/6").fill("1/12", "1/4").fill("1/4", "1/2");
        StringBuilder out = new StringBuilder();
        JsonWriter.write("Demo", "demo.musicxml", List.of(plans.counts("numbers")), out);
        assertTrue(Files.readString(Path.of("docs/json.md")).contains("```\n" + out + "```\n"), out.toString());
    }
}
