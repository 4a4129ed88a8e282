package countstave.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import countstave.CountedScore;
import countstave.chart.ChartOptions;
import countstave.plain.Phrases;
import countstave.practice.Plans;
import countstave.practice.PracticePlan;
import countstave.practice.TempoLadder;
import countstave.testing.Snippets;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.voice.SyllableBank;
import countstave.voice.Register;
import countstave.voice.Clip;
import countstave.voice.Speaker;
import countstave.voice.StepCode;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What is in the page, looked at without a browser. */
class PracticePageTest {

    private static final Path RESOURCES = Path.of("src/main/resources/countstave/page");
    private static final int MOST_BYTES = 2_500_000;

    private static String page(String score, Phrases phrases) throws IOException {
        return page(Plans.counted(score), phrases);
    }

    private static String page(CountedScore counted, Phrases phrases) throws IOException {
        List<PracticePlan> plans = Plans.of(counted);
        StringWriter out = new StringWriter();
        ChartOptions usual = ChartOptions.standard();
        ChartOptions options = new ChartOptions(usual.paper(), false, usual.marginMm(), usual.staffMm(), false, usual.unplayed(), phrases,
                usual.contents());
        new PracticePage(counted.score(), plans, options, Speaker.Choice.DEFAULT).write("", out);
        return out.toString();
    }

    private static JsonNode data(String page) throws IOException {
        Matcher data = Pattern.compile("(?s)<script type=\"application/json\" id=\"data\">(.*?)</script>").matcher(page);
        assertTrue(data.find());
        return new ObjectMapper().readTree(data.group(1));
    }

    @Test
    void smallWholeAndOnItsOwn() throws IOException {
        String page = page("dense", Phrases.in("de"));
        assertTrue(page.getBytes(StandardCharsets.UTF_8).length < MOST_BYTES, page.length() + " characters");
        assertFalse(page.contains("[[") && Pattern.compile("\\[\\[[a-z.-]+]]").matcher(page).find(), "a text is missing");
        assertFalse(Pattern.compile("\\{\\{[a-z]+}}").matcher(page).find(), "a slot is left");
        String elsewhere = page.replace("http://www.w3.org/", "");
        assertFalse(elsewhere.contains("http:") || elsewhere.contains("https:") || elsewhere.contains("url(//"), "leads away");
        assertTrue(page.contains(">Spielen</button>") && page.contains("lang=\"de\""));
        Matcher script = Pattern.compile("(?s)<script type=\"module\">(.*?)</script>").matcher(page);
        assertTrue(script.find());
        assertTrue(page.contains("script-src '" + PageScript.hash(script.group(1)) + "'"), "the policy allows the script as it stands");
    }

    /** Positions and lengths add up: every bar's counts lie in it, every loop in the part, words belong to counts. */
    @Test
    void theDataAreThePlan() throws IOException {
        JsonNode data = data(page("meters", Phrases.ENGLISH));
        List<PracticePlan> plans = Plans.of(Plans.counted("meters"));
        assertEquals(plans.size(), data.get("parts").size());
        for (int p = 0; p < plans.size(); p++) {
            JsonNode part = data.get("parts").get(p);
            PracticePlan plan = plans.get(p);
            assertEquals(plan.counts().bars().size(), part.get("bars").size());
            for (int b = 0; b < plan.counts().bars().size(); b++) {
                List<String> counts = new ArrayList<>();
                part.get("bars").get(b).get("ways").get(0).get("counts").forEach(count -> {
                    if ((count.get("stages").asInt() & 1) != 0) {
                        counts.add(count.get("at").asText() + (count.get("played").asBoolean() ? " played" : ""));
                    }
                });
                List<String> expected = plan.counts().bars().get(b).segments().stream().flatMap(s -> s.counts().stream())
                        .map(c -> c.at() + (c.played() ? " played" : "")).toList();
                assertEquals(expected, counts, "bar " + b);
                for (JsonNode words : part.get("words")) {
                    String[] ways = words.get("bars").get(b).asText().split(" ");
                    assertEquals(part.get("bars").get(b).get("ways").size(), ways.length);
                    for (int way = 0; way < ways.length; way++) {
                        String row = words.get("rows").get(Integer.parseInt(ways[way])).asText();
                        assertEquals(part.get("bars").get(b).get("ways").get(way).get("counts").size(), row.split(" ").length);
                    }
                }
            }
            Offset end = countstave.practice.Stretch.of(plan.counts()).end();
            assertTrue(part.get("loops").size() > 2);
            part.get("loops").forEach(loop -> {
                Offset from = Offset.parse(loop.get("from").asText());
                Offset to = Offset.parse(loop.get("to").asText());
                assertTrue(from.isBefore(to) && !from.isBefore(Offset.ZERO) && !to.isAfter(end), loop.toString());
            });
        }
    }

    /** The page counts its tempo in the unit in which it is written; the plan of six eighths has it in dotted quarters. */
    @Test
    void stepsAreInTheUnitOfTheScore() throws IOException {
        CountedScore counted = Plans.countedXml(Snippets.in("6/8").tempo(126).bar("8 8 8 16 16 8 8").bar("4. 8 16 16 16 16").xml());
        TempoLadder.Rung slowest = Plans.of(counted).get(0).passages().get(0).counts().get(0).steps().get(0);
        assertEquals(Duration.of(3, 8), slowest.tempo().unit());
        JsonNode steps = data(page(counted, Phrases.ENGLISH)).get("parts").get(0).get("loops").get(0).get("steps");
        assertEquals(slowest.tempo().perMinute().doubleValue() * 3 / 2, steps.get(0).get("perMinute").asDouble());
        assertEquals(126, steps.get(steps.size() - 1).get("perMinute").asDouble());
    }

    /** A word of the bank goes through the page as it is: coded twice it is what it was. */
    @Test
    void wordsSoundAsInTheBank() throws IOException {
        JsonNode voice = data(page("dense", Phrases.ENGLISH)).get("voice");
        Clip three = SyllableBank.of(Register.LOW).clip("en", "3");
        JsonNode clip = voice.get("clips").get(voice.get("said").get(0).get("3").asInt());
        float[] heard = StepCode.decode(Base64.getDecoder().decode(clip.get("code").asText()), 0, clip.get("samples").asInt(),
                clip.get("beginning").asInt());
        assertEquals(three.samples().length, heard.length);
        double off = 0;
        double power = 0;
        for (int i = 0; i < heard.length; i++) {
            off += Math.pow(heard[i] - three.samples()[i], 2);
            power += Math.pow(three.samples()[i], 2);
        }
        assertTrue(off < power / 10_000, "off by " + off / power);
        assertEquals(three.centre(), clip.get("centre").asDouble(), 0.001);
    }

    /** The modules are laid one behind the other: no name stands twice, and each finds what it imports before it. */
    @Test
    void modulesFitTogether() throws IOException {
        Set<String> names = new HashSet<>();
        Set<String> exported = new HashSet<>();
        Set<Path> there = new HashSet<>();
        for (String module : PageScript.MODULES) {
            Path file = RESOURCES.resolve(module + ".js");
            there.add(file);
            String text = Files.readString(file);
            assertTrue(text.lines().count() <= 450, file + " is long");
            Matcher imported = Pattern.compile("(?m)^import \\{ (.*) } from './(\\w+)\\.js';$").matcher(text);
            while (imported.find()) {
                for (String name : imported.group(1).split(", ")) {
                    assertTrue(exported.contains(imported.group(2) + " " + name), file + " imports " + name + " from " + imported.group(2));
                    assertTrue(Pattern.compile("\\b" + name + "\\b").matcher(text.substring(imported.end())).find(), file + ": " + name);
                }
            }
            Matcher own = Pattern.compile("(?m)^(export )?(?:async )?(?:class|function|const|let) (\\w+)").matcher(text);
            while (own.find()) {
                assertTrue(names.add(own.group(2)), own.group(2) + " stands twice");
                if (own.group(1) != null) {
                    exported.add(module + " " + own.group(2));
                }
            }
        }
        try (java.util.stream.Stream<Path> files = Files.list(RESOURCES)) {
            assertEquals(there, files.filter(file -> file.toString().endsWith(".js")).collect(Collectors.toSet()));
        }
    }

    /** Every text of the page is used, and what is asked for is there. */
    @Test
    void textsOfThePage() throws IOException {
        StringBuilder all = new StringBuilder(PageScript.text());
        Set<String> used = new TreeSet<>();
        Matcher slot = Pattern.compile("\\[\\[page\\.([a-z.-]+)]]").matcher(PageScript.resource("page.html"));
        while (slot.find()) {
            used.add(slot.group(1));
        }
        Matcher asked = Pattern.compile("text\\((?:[\\w ]+\\? )?'([a-z.-]+)'(?: : '([a-z.-]+)')?").matcher(all);
        while (asked.find()) {
            used.add(asked.group(1));
            if (asked.group(2) != null) {
                used.add(asked.group(2));
            }
        }
        used.addAll(List.of("loop.passages", "loop.seams", "loop.letters", "decimal"));
        used.remove("loop.");
        assertEquals(new TreeSet<>(Phrases.ENGLISH.all("page.").keySet()), used);
    }
}
