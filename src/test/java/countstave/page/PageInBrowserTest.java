package countstave.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.ChartOptions;
import countstave.count.Count;
import countstave.musicxml.ScoreFile;
import countstave.practice.Passage;
import countstave.practice.Plans;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.practice.StepCount;
import countstave.practice.Stretch;
import countstave.score.PulseChoice;
import countstave.score.Tempo;
import countstave.score.TimeOptions;
import countstave.sound.GuideOptions;
import countstave.sound.GuideTrack;
import countstave.sound.Layer;
import countstave.sound.Leg;
import countstave.testing.Snippets;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.voice.Speaker;
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.interactions.Actions;

/** The practice page in a real browser: one session for all checks. */
class PageInBrowserTest {

    /** How far the lit count may be from the sound, in seconds. */
    private static final double GOAL = 0.030;

    private static final int RATE = 48_000;
    /** How long the lit count is watched: 60 for the figures in docs/page.md, less in every run. */
    private static final int WATCHED = Integer.getInteger("page.seconds", 6);
    private static final int TEMPO_CHANGES = 20;

    private static final String NASTY = "&lt;/script&gt;&lt;img src=x onerror=\"window.bad=1\"&gt; &amp;lt;b&amp;gt; {{data}} [[page.play]]";

    /** The whole document, of the chart its first page: the others are of the same pieces. */
    private static final String CHART_ONCE = "{ exclude: [['.pages svg:nth-of-type(n+2)']] }";

    @TempDir
    static Path folder;

    private static Browser browser;
    private static Path dense;
    private static Path exact;
    private static Path song;
    private static CountedScore exactScore;

    @BeforeAll
    static void pages() throws IOException {
        browser = Browser.open(folder.resolve("profile"));
        dense = page("dense", Plans.counted("dense"));
        song = page("song", Plans.countedXml(Files.readString(Path.of("scores/song.musicxml"))
                .replaceFirst("<movement-title>[^<]*|<work-title>[^<]*", "$0 " + NASTY)
                .replaceFirst("<part-name>[^<]*", "<part-name>" + NASTY).replaceFirst("(<lyric[^>]*>(?s:.*?)<text>)[^<]*", "$1" + NASTY)));
        exactScore = Plans.everyNoteSaid(Snippets.in("4/4").tempo(61).bar("16 16 16 16 3:2[8 8 8] 5:4[16 16 16 16 16] 4")
                .bar("3:2[4 5:4[16 16 16 16 16] 4] 7:8[16 16 16 16 16 16 16]").tempo(73).bar("8. 16 3:2[8 8 8] 16 16 8 4").xml());
        exact = page("exact", exactScore);
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    @AfterEach
    void nothingToComplainOf() {
        if (browser.is("window.practice")) {
            browser.run("practice.player.stop()");
        }
        assertEquals(List.of(), browser.complaints());
        browser.driver().executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
    }

    private static Path page(String name, CountedScore counted) throws IOException {
        Path page = folder.resolve(name + ".html");
        List<PracticePlan> plans = Plans.of(counted);
        try (Writer out = Files.newBufferedWriter(page)) {
            new PracticePage(counted.score(), plans, ChartOptions.standard(), Speaker.Choice.DEFAULT).write("", out);
        }
        return page;
    }

    private static void press(CharSequence... keys) {
        new Actions(browser.driver()).sendKeys(keys).perform();
    }

    @Test
    void opensAsksForNothingPlaysAndChangesItsTempo() {
        browser.openNew(dense);
        assertEquals(0, browser.number("performance.getEntriesByType('resource').filter((e) => !e.name.startsWith('data:')).length"));
        assertEquals("Eleven Lanterns on the Weir", browser.driver().getTitle());
        assertTrue(browser.is("document.querySelectorAll('rect.bar').length >= 24"));
        // the policy holds: no request goes out even if a script asks for one
        assertEquals("refused", browser.await("fetch('https://example.invalid/').then(() => done('sent'), () => done('refused'))"));
        assertTrue(browser.complaints().stream().allMatch(line -> line.contains("Content Security Policy")));
        // plays and stops by key and button; counted in twice as fast
        browser.run("practice.setTempo(126)");
        press(Keys.SPACE);
        browser.until("practice.player.playing && document.getElementById('play').textContent === 'Stop'");
        assertEquals("true", browser.at("#play").getDomAttribute("aria-pressed"));
        assertTrue(browser.number("practice.player.made.filter((s) => s.time > practice.player.context.currentTime + 1.2).length") > 0,
                "handed to the clock so far ahead that a tab in the background goes on");
        browser.until("document.querySelectorAll('rect.lit').length === 1");
        assertEquals("", browser.text("document.getElementById('said').textContent"), "says nothing while it plays");
        browser.at("#play").click();
        browser.until("!practice.player.playing");
        assertEquals(0, browser.number("document.querySelectorAll('rect.lit').length"));
        assertEquals("Stopped", browser.text("document.getElementById('said').textContent"));
        // the tempo changes at once and from the same place
        browser.run("practice.setTempo(63)");
        browser.set("countIn", false);
        browser.at("#play").click();
        browser.until("practice.player.trackNow() > 0.3");
        Object jump = browser.run("const p = practice.player; const t = p.context.currentTime + 0.005; const x = p.pace.trackAt(t);"
                + " practice.setTempo(90); return [p.pace.trackAt(t) - x, p.pace.speed * 63]");
        List<?> values = (List<?>) jump;
        assertEquals(0, ((Number) values.get(0)).doubleValue(), 0.004);
        assertEquals(90, ((Number) values.get(1)).doubleValue(), 1e-9);
        browser.until("document.getElementById('tempo-now').textContent === '♩ = 90'");
        browser.run("for (let i = 0; i < 4; i++) { practice.taps.times.push(performance.now() - 2000 + i * 500); } practice.tap()");
        assertEquals(120, browser.number("practice.perMinute"), 8, "by tapping");
    }

    @Test
    void everyClickStandsWithinASampleOfThePlan() {
        browser.openNew(exact);
        // two times at 61, once at 97, once at 40: the tempo marks of the score inside it
        double[] tempi = {61, 61, 97, 40};
        List<Layer> layers = List.of(Layer.BAR, Layer.BEAT, Layer.GRID, Layer.RHYTHM);
        Map<Layer, List<Exact>> expected = new EnumMap<>(Layer.class);
        layers.forEach(layer -> expected.put(layer, new ArrayList<>()));
        Exact start = Exact.ZERO;
        Stretch stretch = Stretch.of(exactScore.parts().get(0));
        for (int i = 0; i < tempi.length; i++) {
            Leg leg = new Leg(stretch, Exact.of((long) tempi[i], 61), Stage.ALL, 1, "");
            GuideOptions options = new GuideOptions(GuideOptions.DEFAULT.layers(), i == 0, true, List.of(), GuideOptions.DEFAULT_PEAK);
            GuideTrack track = GuideTrack.of(List.of(leg), options);
            Exact from = start;
            track.clicks().forEachRemaining(click -> expected.getOrDefault(click.layer(), new ArrayList<>()).add(from.plus(click.second())));
            start = start.plus(track.seconds());
        }
        List<?> heard = (List<?>) browser.await("practice.render({ seconds: arguments[0], rate: arguments[1],"
                + " speeds: arguments[2].map((t) => t / 61) }).then((sound) => { const at = [[], [], [], []];"
                + " sound.forEach((value, i) => { if (value) { at.forEach((one, k) => { if (value >> k & 1) { one.push(i); } }); } });"
                + " done(at); })", start.toDouble() + 1, RATE, tempi);
        for (Layer layer : layers) {
            double most = 0;
            List<?> clicks = (List<?>) heard.get(layers.indexOf(layer));
            assertEquals(expected.get(layer).size(), clicks.size(), "clicks of the layer " + layer.id());
            for (int i = 0; i < clicks.size(); i++) {
                double off = ((Number) clicks.get(i)).doubleValue() - expected.get(layer).get(i).times(RATE).toDouble();
                most = Math.max(most, Math.abs(off));
            }
            assertTrue(most <= 1, layer + ": off by " + most + " samples");
            System.out.println("page: " + clicks.size() + " clicks of the layer " + layer.id() + ", off by " + most + " samples at most");
        }
        // what sounds is the click itself, and its first sample is heard
        List<?> first = (List<?>) browser.await("practice.set.countIn = false; practice.render({ seconds: 3, rate: arguments[0], layer: 'beat',"
                + " speeds: [1] }).then((sound) => done([sound[0], sound[1], sound.reduce((a, b) => Math.max(a, b))]))", RATE);
        assertNotEquals(0.0, ((Number) first.get(0)).doubleValue());
        assertTrue(((Number) first.get(2)).doubleValue() > 0.1);
    }

    @Test
    void theLitCountIsWithTheSound() {
        browser.openNew(exact);
        browser.set("countIn", false);
        browser.run("window.watched = []; window.clicked = new Map(); const p = practice.player;"
                + "p.open(practice.levels()); const click = p.desk.click.bind(p.desk);"
                + "p.desk.click = (layer, time) => { const made = click(layer, time); if (layer === 'grid') { const stop ="
                + " made.source.stop.bind(made.source); clicked.set(made, time); made.source.stop = () => { if (p.playing) {"
                + " clicked.delete(made); } stop(); }; } return made; };");
        browser.at("#play").click();
        Object[] result = ((List<?>) browser.await("const p = practice.player; const seen = []; let was = null; let changes = 0;"
                // since when the page has wanted to look: a frame that it asked for, or the end of its sleep
                + "let since = 0; let frames = 0; let due = Infinity; let wanted = Infinity; let began = null;"
                + "const now = () => began === null ? p.heardAt() : began;"
                + "const raf = window.requestAnimationFrame; const wait = window.setTimeout;"
                + "window.requestAnimationFrame = (draw) => { wanted = Math.min(wanted, due, now()); due = Infinity; return raf(() => {"
                + " since = wanted; wanted = Infinity; frames++; began = p.heardAt(); draw(); began = null; }); };"
                + "window.setTimeout = (then, ms) => { due = now() + ms / 1000; return wait(then, ms); };"
                // where the new tempo has another count, what is on by it began before the change: no sound was due then
                + "let pace = practice.line.pace; let other = -9;"
                + "const lit = practice.chart.lit.bind(practice.chart);"
                + "practice.chart.lit = (count) => { const heard = p.heardAt(); const at = count && count.at.toString() + count.repeat;"
                + " if (pace !== practice.line.pace) { pace = practice.line.pace; other = heard; } if (count && at !== was && heard > other + 0.1) {"
                + " seen.push([heard, heard - since]); } was = at; lit(count); };"
                + "const change = setInterval(() => { changes++; practice.setTempo(50 + changes * 13 % 41);"
                + " if (changes === arguments[1]) {"
                + " clearInterval(change); } }, arguments[0] * 900 / arguments[1]);"
                + "wait(() => { const times = [...clicked.values()]; practice.chart.lit = lit; window.requestAnimationFrame = raf;"
                + " window.setTimeout = wait; done([changes, seen.map(([at, late]) => {"
                + " const click = times.reduce((a, b) => (b <= at + 0.006 && b > a ? b : a), -9); return [at - click, late]; }), frames]); },"
                + " arguments[0] * 1000)", WATCHED, TEMPO_CHANGES)).toArray();
        assertEquals(TEMPO_CHANGES, ((Number) result[0]).intValue());
        double most = 0;
        double sum = 0;
        int inTime = 0;
        List<?> seen = (List<?>) result[1];
        for (Object one : seen) {
            double late = ((Number) ((List<?>) one).get(0)).doubleValue();
            double frame = ((Number) ((List<?>) one).get(1)).doubleValue();
            // a machine with other work draws a frame late now and then: the page can be no earlier than its frame
            assertTrue(late > -0.006 && late < Math.max(frame + 0.006, GOAL), "lit " + late + " s after the sound in a frame of " + frame + " s");
            if (frame <= 0.025) {
                most = Math.max(most, Math.abs(late));
                sum += Math.abs(late);
                inTime++;
            }
        }
        assertTrue(inTime > WATCHED * 2, inTime + " of " + seen.size() + " counts seen in time");
        // between two counts nobody looks: of the sixty frames a second only those around a count, or a change of tempo, are asked for
        int frames = ((Number) result[2]).intValue();
        assertTrue(frames < 6 * (seen.size() + TEMPO_CHANGES + 2 * WATCHED), frames + " frames for " + seen.size() + " counts");
        assertTrue(most <= GOAL, most + " s");
        System.out.println("page: lit within " + Math.round(most * 1000) + " ms, mean " + Math.round(sum / inTime * 1000)
                + " ms, " + inTime + " of " + seen.size() + " counts in " + WATCHED + " s, " + frames + " frames, " + TEMPO_CHANGES + " tempo changes");
    }

    @Test
    void stagesAndSystemsChangeTheWords() {
        browser.openNew(dense);
        String words = "[...practice.line.counts].filter((c) => c.bar.place === 0).map((c) => practice.chart.wordOf(c)).filter((w) =>"
                + " !w.classList.contains('silent')).map((w) => w.textContent).join(' ')";
        assertEquals("1 e & a 2 e & a 3 e & a 4 e & a", browser.text(words));
        browser.set("stage", Stage.BEATS.ordinal());
        assertEquals("1 2 3 4", browser.text(words));
        browser.set("stage", Stage.ALL.ordinal());
        browser.set("system", browser.text("JSON.parse(document.getElementById('data').textContent).systems.findIndex((s) => s.name === 'takadimi')"));
        assertEquals("ta ka di mi ta ka di mi ta ka di mi ta ka di mi", browser.text(words));
        // longer words are smaller where a fast count leaves them no room, down to half: none runs into the next
        String tight = "practice.line.bars.flatMap((bar) => { const words = bar.counts.map((c) => practice.chart.wordOf(c)).filter((w) => w"
                + " && !w.classList.contains('silent')); return words.slice(1).map((word, i) => [words[i], word]).filter(([one, next]) =>"
                + " one.ownerSVGElement === next.ownerSVGElement && next.getBBox().x > one.getBBox().x && next.getBBox().x <"
                + " one.getBBox().x + one.getBBox().width); }).filter(([one]) => Number(one.getAttribute('font-size')) > 0.51 * one.dataset.size)";
        assertEquals(0, browser.number(tight + ".length"));
        assertTrue(browser.is("practice.line.bars.some((bar) => new Set(bar.counts.map((c) => practice.chart.wordOf(c)).filter((w) => w)"
                + ".map((w) => w.getAttribute('font-size'))).size > 1)"), "others in the same bar keep their size");
        String foot = "[...document.querySelectorAll('svg text')].map((t) => t.textContent).find((t) => t.includes('Bold: played'))";
        assertTrue(browser.text(foot).startsWith("Takadimi: ta ka di mi, ta ki da. Bold: played."), browser.text(foot));
        assertEquals(13, browser.number("document.querySelectorAll('#system option').length"));
        assertTrue(browser.is("JSON.parse(document.getElementById('data').textContent).voice.said.every((words, i) =>"
                + " practice.line.part.words[i].rows.join(' ').split(' ').every((word) => word in words))"), "every word has a sound");
        // a beat inside a tuplet that is counted through is said at its stage, and has a place on the page
        browser.set("stage", Stage.BEATS.ordinal());
        assertTrue(browser.number("practice.line.counts.filter((c) => !(c.stages & 1)).length") > 0);
        assertTrue(browser.is("practice.line.counts.filter((c) => c.stages >> 3 & 1).every((c) => practice.chart.boxOf(c))"));
    }

    /** At another tempo the page is counted as the plan of that tempo says, in words, ticks, marks, and what sounds. */
    @Test
    void theCountIsThatOfTheTempo() {
        browser.openNew(dense);
        String shown = "[...document.querySelectorAll('svg text.count, svg text.parenthesis, svg text.mark')].filter((w) => { const b ="
                + " w.getBoundingClientRect(); const r = practice.chart.bars.get('%s')[0].getBoundingClientRect(); return getComputedStyle(w)"
                + ".visibility === 'visible' && b.x >= r.x && b.x < r.right && b.y >= r.y && b.y < r.bottom; }).sort((a, b) =>"
                + " a.getBoundingClientRect().x - b.getBoundingClientRect().x).map((w) => w.textContent).join(' ')";
        assertEquals("16ths 1 e & a 2 e & a 3 e & a 4 e & a", browser.text(String.format(shown, 0)));
        browser.run("practice.setTempo(126)");
        assertEquals("8ths; 16ths felt, all said up to ♩ = 97 1 · & · 2 · & · 3 · & · 4 · & ·", browser.text(String.format(shown, 0)));
        assertEquals(plannedAt("dense", "126", 0), browser.text("practice.track().events.filter((e) =>"
                + " e.layer === 'voice' && e.bar === 0).map((e) => e.say).join(' ')"));
        browser.run("practice.setTempo(31.5)");
        assertEquals(plannedAt("dense", "31.5", 4), browser.text("practice.track().events.filter((e) => e.layer === 'voice' && e.bar === 4)"
                + ".map((e) => e.say).join(' ')"));
        browser.run("practice.setTempo(63)");
        assertEquals("16ths 1 e & a 2 e & a 3 e & a 4 e & a", browser.text(String.format(shown, 0)), "as it is printed");
        assertEquals(0, browser.number("document.querySelectorAll('.otherwise').length"));
        // at a step of the plan it is that of the printed sheet, to the very tempo
        List<String> sheet = new ArrayList<>();
        for (Passage passage : Plans.of(Plans.counted("dense")).get(0).passages()) {
            for (StepCount count : passage.sameAs() == 0 ? passage.counts() : List.<StepCount>of()) {
                String says = count.stretch().slices().stream().flatMap(slice -> slice.counts().counts().stream()).map(Count::say)
                        .collect(Collectors.joining(" "));
                count.steps().forEach(step -> sheet.add(step.tempo().perMinute().toPlainString() + " " + says));
            }
        }
        assertEquals(sheet, browser.run("const out = []; practice.line.loops.forEach((loop, i) => { if (loop.steps) { practice.chooseLoop(String(i));"
                + " for (const step of loop.steps) { practice.setTempo(step.perMinute); out.push(step.perMinute + ' ' + practice.line.counts"
                + ".filter((c) => c.stages & 1 && c.at.compare(loop.from) >= 0 && c.at.isBefore(loop.to)).map((c) => practice.words(c)).join(' ')); } } });"
                + " return out;"));
        assertTrue(browser.number("practice.line.paces.length - practice.line.part.paces.length") > 0, "no speed has them all by itself");
        browser.run("practice.chooseLoop('whole'); practice.setTempo(63)");
        // with steps by themselves it becomes another at the repeat that has the other tempo, in what sounds and on the page
        browser.run("practice.setLoop('own', practice.line.counts[0].at, practice.line.counts[8].at); practice.setTempo(75)");
        stepsByThemselves(25);
        browser.set("level-all", 0);
        browser.run("practice.setTempo(100)");
        int words = (int) browser.number("practice.line.bars[0].counts.length");
        assertEquals(8, words);
        browser.run("practice.setTempo(75)");
        assertEquals(16, browser.number("practice.line.bars[0].counts.length"));
        browser.at("#play").click();
        String other = "practice.player.later.find((one) => one.track.counts.length === 4)";
        browser.until(other);
        assertEquals("16 8", browser.text("practice.line.bars[0].counts.length + ' ' + practice.player.trackOf(0).counts.length"),
                "handed over ahead, and not yet on the page");
        assertEquals("4 8", browser.text("practice.player.trackOf(" + other + ".repeat).counts.length + ' '"
                + " + practice.player.trackOf(" + other + ".repeat - 1).counts.length"));
        browser.until("practice.player.count() && practice.player.count().repeat >= " + other + ".repeat");
        browser.until("practice.line.bars[0].counts.length === 8");
    }

    /** What the tool itself counts in a bar when the whole score has this tempo. */
    private static String plannedAt(String score, String tempo, int bar) {
        CountingOptions usual = CountingOptions.defaults();
        CountedScore counted = CountedScore.of(ScoreFile.load(Path.of("scores", score + ".musicxml")), usual.with(
                new TimeOptions(PulseChoice.BY_METER, new Tempo(Duration.of(1, 4), new BigDecimal(tempo)), null)));
        return counted.parts().get(0).bars().get(bar).segments().stream().flatMap(s -> s.counts().stream()).map(Count::say)
                .collect(Collectors.joining(" "));
    }

    /** Whatever the tempo, every count has its word in the chart, and what is printed comes back. */
    @ParameterizedTest
    @ValueSource(strings = {"meters", "polyrhythms"})
    void everyCountOfEveryTempoHasItsPlace(String score) throws IOException {
        browser.openNew(page(score, Plans.counted(score)));
        assertEquals("", browser.text("(() => { const out = []; let ways = 0; let steps = 0;"
                + " for (const part of document.querySelectorAll('#part option')) { practice.set.part = Number(part.value); practice.choosePart();"
                + " const written = practice.written.perMinute;"
                + " for (const size of ['fit', 'large']) { practice.chart.size = size; practice.redraw();"
                + " for (const speed of [0.4, 0.65, 1.2, 2, 1]) { practice.setTempo(written * speed); ways += practice.chart.other.size;"
                + " const lost = practice.line.counts.filter((c) => (c.stages & 1) && !practice.chart.wordOf(c)).length;"
                + " const wrong = /NaN|Infinity|undefined/.test(document.querySelector('.pages').innerHTML);"
                + " if (lost || wrong) { out.push([size, speed, lost, wrong].join(' ')); } }"
                + " if (document.querySelector('.otherwise')) { out.push(size + ': not as it was printed'); } }"
                // and at the steps of the plan, where these are counted as at no other speed
                + " practice.line.loops.forEach((loop, i) => { practice.chooseLoop(String(i)); for (const step of loop.steps || []) {"
                + " if (practice.paceOf(step.perMinute / practice.written.perMinute) >= practice.line.part.paces.length) {"
                + " practice.setTempo(step.perMinute); steps++;"
                + " if (practice.line.counts.some((c) => (c.stages & 1) && !practice.chart.wordOf(c))) { out.push(i + ' ' + step.perMinute); } } } }); }"
                + " return ways > 20 && (steps > 0 || '" + score + "' !== 'meters') ? out.join('; ') : 'hardly a bar is counted otherwise'; })()"));
    }

    /** From now on every repeat is faster by so many percent. */
    private static void stepsByThemselves(int percent) {
        browser.set("countIn", false);
        browser.set("up", "percent");
        browser.set("percent", percent);
        browser.set("clean-times", 1);
        browser.set("alone", true);
    }

    @Test
    void loopsByListByDraggingAndByKeys() {
        browser.openNew(dense);
        browser.set("loop", "0");
        assertEquals("passage", browser.text("practice.ready.kind"));
        // what is chosen is looked at, before it sounds
        browser.until("(() => { const bar = practice.chart.bars.get(String(practice.line.barAt(practice.from).index))[0]"
                + ".getBoundingClientRect(); return bar.top >= 0 && bar.bottom <= document.getElementById('stand')"
                + ".getBoundingClientRect().top; })()");
        assertTrue(browser.number("document.querySelectorAll('rect.looped').length") > 0);
        assertTrue(browser.number("document.querySelectorAll('#steps button').length") > 3, "tempo steps of the plan");
        assertEquals(3, browser.number("document.querySelectorAll('#loop optgroup').length"), "passages, seams, letters");
        String point = "(() => { const b = practice.chart.boxOf(practice.line.counts[%d]).shape.getBoundingClientRect();"
                + " return [Math.round(b.x + b.width / 2), Math.round(b.y + b.height / 2)]; })()";
        browser.run("document.getElementById('chart').scrollIntoView()");
        List<?> from = (List<?>) browser.run("return " + String.format(point, 4));
        List<?> to = (List<?>) browser.run("return " + String.format(point, 11));
        drag(from, to);
        assertEquals("1/4 3/4", browser.text("practice.from + ' ' + practice.to"));
        browser.run("document.getElementById('chart').focus()");
        press(Keys.ESCAPE);
        assertEquals("whole", browser.text("practice.set.loop"));
        press(Keys.HOME, Keys.ARROW_DOWN, Keys.ARROW_RIGHT, "[", Keys.ARROW_DOWN, "]");
        assertEquals("17/16 33/16", browser.text("practice.from + ' ' + practice.to"));
        press(Keys.ENTER);
        browser.until("practice.player.playing");
        assertEquals("1/1", browser.text("practice.track().set.begin.minus(practice.from).plus(practice.from).minus(practice.from)"
                + ".over(practice.track().set.begin.minus(practice.from))"));
    }

    private static void drag(List<?> from, List<?> to) {
        Actions actions = new Actions(browser.driver());
        org.openqa.selenium.interactions.PointerInput mouse = new org.openqa.selenium.interactions.PointerInput(
                org.openqa.selenium.interactions.PointerInput.Kind.MOUSE, "mouse");
        actions.tick(move(mouse, from)).tick(mouse.createPointerDown(0)).tick(move(mouse, to)).tick(mouse.createPointerUp(0)).perform();
    }

    private static org.openqa.selenium.interactions.Interaction move(org.openqa.selenium.interactions.PointerInput pointer, List<?> to) {
        return pointer.createPointerMove(java.time.Duration.ofMillis(60), org.openqa.selenium.interactions.PointerInput.Origin.viewport(),
                ((Number) to.get(0)).intValue(), ((Number) to.get(1)).intValue());
    }

    @Test
    void touchOnAPhone() {
        browser.openNew(dense);
        browser.screen(360, 740, true);
        assertEquals("narrow", browser.text("document.querySelector('.pages').dataset.drawing"));
        assertTrue(browser.number("document.documentElement.scrollWidth") <= 360, "nothing sticks out");
        assertTrue(browser.is("[...document.querySelectorAll('#stand button, #stand select')].every((b) => { const r ="
                + " b.getBoundingClientRect(); return !r.width || r.left >= 0 && r.right <= 360 && r.height >= 40; })"), "can be hit");
        assertTrue(browser.number("document.getElementById('stand').offsetHeight") < 200);
        browser.run("document.getElementById('settings').open = true; practice.chooseLoop('0')");
        assertTrue(browser.is("[...document.querySelectorAll('fieldset input[type=range]')].every((s) => s.offsetWidth > 180)"),
                "a thumb sets them finely");
        assertTrue(browser.number("document.getElementById('steps').offsetHeight") < 370, "all steps are seen at once");
        browser.run("document.getElementById('settings').open = false; practice.chooseLoop('whole')");
        browser.at("#mark").click();
        browser.run("window.scrollTo(0, document.querySelector('rect.bar').getBoundingClientRect().top + scrollY - 100)");
        for (int count : new int[] {0, 7}) {
            List<?> at = (List<?>) browser.run("const b = practice.chart.boxOf(practice.line.counts[arguments[0]]).shape"
                    + ".getBoundingClientRect(); return [b.x + b.width / 2, b.y + b.height / 2]", count);
            Map<String, Object> touch = Map.of("x", at.get(0), "y", at.get(1));
            browser.driver().executeCdpCommand("Input.dispatchTouchEvent", Map.of("type", "touchStart", "touchPoints", List.of(touch)));
            browser.driver().executeCdpCommand("Input.dispatchTouchEvent", Map.of("type", "touchEnd", "touchPoints", List.of()));
        }
        browser.until("practice.set.loop === 'own'");
        assertEquals("0/1 1/2", browser.text("practice.from + ' ' + practice.to"));
        assertEquals("false", browser.at("#mark").getDomAttribute("aria-pressed"));
    }

    @Test
    void stepsAndTicksAreKept() {
        browser.openNew(exact);
        browser.set("loop", "0");
        double first = browser.number("practice.ready.steps[0].perMinute");
        int clean = (int) browser.number("practice.ready.steps[0].clean");
        press("c");
        assertEquals("|" + "·".repeat(clean - 1), browser.text("document.getElementById('ticks').textContent"));
        browser.set("stage", 1);
        browser.openAgain(exact);
        assertEquals("0 1", browser.text("practice.set.loop + ' ' + practice.set.stage"));
        assertEquals("|" + "·".repeat(clean - 1), browser.text("document.getElementById('ticks').textContent"));
        for (int i = 1; i < clean; i++) {
            press("c");
        }
        assertEquals(browser.number("practice.ready.steps[1].perMinute"), browser.number("practice.perMinute"), "one step up");
        press("a");
        press("a");
        assertEquals(first, browser.number("practice.perMinute"), "two errors in a row: back");
        assertTrue(browser.is("JSON.parse(practice.ladder.text()).loops[practice.key].clean"));
        // read back where nothing is known of it
        String ticks = browser.text("practice.ladder.text()");
        browser.openNew(exact);
        browser.set("loop", "0");
        assertEquals("·".repeat(clean), browser.text("document.getElementById('ticks').textContent"));
        for (String file : new String[] {"{}", "not JSON", "{\"format\":\"countstave-ticks/1\",\"loops\":{\"x\":{\"clean\":{\"60\":\"<b>\"}}}}", ticks}) {
            String says = (String) browser.await("practice.import({ text: async () => arguments[0] }).then(() =>"
                    + " done(document.getElementById('said').textContent))", file);
            assertEquals(file.equals(ticks) ? "Ticks read. Loops: 1" : "This file holds no ticks of a practice page", says);
        }
        assertEquals("|".repeat(clean), browser.text("document.getElementById('ticks').textContent"), "all of them clean, as it was saved");
        browser.set("alone", true);
        browser.set("up", "percent");
        browser.set("percent", 10);
        browser.set("clean-times", 1);
        assertEquals(Math.round(first * 1.1), browser.number("Math.round(practice.speedOf() * practice.written.perMinute)"));
    }

    /** Steps by themselves: the new tempo begins with the repeat, neither before nor after it. */
    @Test
    void stepsByThemselvesBeginWithTheRepeat() {
        browser.openNew(exact);
        browser.run("practice.setLoop('own', practice.line.counts[0].at, practice.line.counts[4].at)");
        stepsByThemselves(20);
        browser.at("#play").click();
        browser.until("practice.player.playing && practice.player.pace.points.length > 2");
        List<?> points = (List<?>) browser.run("const p = practice.player; return p.pace.points.slice(1).map((q) => [q.from / p.track.cycle,"
                + " q.speed * 61, p.pace.points[p.pace.points.indexOf(q) - 1].at + (q.from - p.pace.points[p.pace.points.indexOf(q) - 1].from)"
                + " / p.pace.points[p.pace.points.indexOf(q) - 1].speed - q.at])");
        double tempo = 61;
        for (Object one : points) {
            List<?> point = (List<?>) one;
            double repeat = ((Number) point.get(0)).doubleValue();
            assertEquals(Math.rint(repeat), repeat, 1e-9);
            double before = tempo;
            tempo = ((Number) point.get(1)).doubleValue();
            assertTrue(tempo > before, tempo + " after " + before);
            assertEquals(0, ((Number) point.get(2)).doubleValue(), 1e-9, "no jump");
        }
    }

    @Test
    void clickSilenceSwingAndPlacing() {
        browser.openNew(exact);
        assertEquals(12, browser.number("practice.track().events.filter((e) => e.layer === 'beat').length"));
        browser.run("document.querySelectorAll('#beats input').forEach((box, i) => { if (i % 2 === 0) { box.click(); } })");
        assertEquals("2,4", browser.text("practice.set.beats"));
        assertEquals(6, browser.number("practice.track().events.filter((e) => e.layer === 'beat').length"));
        browser.set("silent", "1/4");
        // of every four bars the last: the first of the second time through
        assertTrue(browser.is("(() => { const t = practice.track(); return t.isSilent({ bar: 0 }, 1) && !t.isSilent({ bar: 2 }, 0); })()"));
        browser.set("swing", "2/3");
        assertEquals("2/3 of a beat", browser.text("(() => { const l = practice.line; const bar = l.bars[0]; const f = bar.start.constructor;"
                + " const at = bar.start.plus(f.of('1/8')); return l.swung(bar, at, f.of('2/3')).minus(bar.start).over(f.of('1/4')); })()")
                + " of a beat");
        assertEquals("5/12", browser.text("(() => { const l = practice.line; const bar = l.bars[0]; const f = bar.start.constructor;"
                + " return l.swung(bar, f.of('5/12'), f.of('2/3')); })()"), "a triplet is not swung");
        browser.set("place", 20);
        assertTrue(browser.is("practice.track().events.every((e) => (e.layer === 'rhythm') === (e.later === 0.02))"));
        // a device without sound: it is said, instead of nothing happening
        browser.run("practice.player.open(practice.levels()); practice.player.context.suspend(); practice.player.context.resume = () =>"
                + " new Promise(() => { })");
        browser.at("#play").click();
        browser.until("!document.getElementById('no-sound').hidden");
        assertFalse(browser.is("practice.player.playing"));
    }

    @Test
    void hostileTextsAndAPickup() {
        browser.openNew(song);
        assertFalse(browser.is("window.bad"));
        assertEquals(0, browser.number("document.querySelectorAll('img, body b').length"));
        assertTrue(browser.text("document.querySelector('h1').textContent").contains("</script><img src=x onerror=\"window.bad=1\"> &lt;b&gt; {{data}}"));
        assertTrue(browser.text("document.querySelector('#part option').textContent").contains("<img src=x"));
        assertTrue(browser.is("[...document.querySelectorAll('svg text')].some((t) => t.textContent.includes('<img src=x'))"), "the lyric");
        // a pickup is counted in with the beats before it, and falls on its own beat again in the loop
        Leg leg = new Leg(Stretch.of(Plans.counted("song").parts().get(0)), Exact.ONE, Stage.ALL, 2, "");
        GuideTrack track = GuideTrack.of(List.of(leg), GuideOptions.DEFAULT);
        assertEquals(track.seconds().toDouble(), browser.number("(() => { const t = practice.track(); return 2 * t.cycle"
                + " - t.gap.length.times(t.perWhole).toNumber() - t.before[0].second; })()"), 1e-9);
        browser.set("part", "1");
        assertEquals("1", browser.text("practice.set.part"));
        assertTrue(browser.is("[...document.querySelectorAll('svg.countstave-page')].some((p) => p.hidden)"), "the other part is put aside");
    }

    @Test
    void forEveryone() throws IOException {
        String axe = Files.readString(Path.of("src/test/resources/axe-core/axe.min.js"));
        browser.openNew(song);
        assertEquals("polite", browser.at("#said").getDomAttribute("aria-live"));
        assertEquals(30, browser.number("document.getElementById('level-all').value"), "begins low");
        assertTrue(browser.text("document.getElementById('care').textContent").contains("light-headed"));
        // by keyboard alone one reaches everything, and sees where one is
        assertTrue(browser.is("[...document.querySelectorAll('button, select, input, summary, #chart')].every((e) => e.tabIndex >= 0)"));
        browser.run("document.getElementById('chart').focus()");
        press(Keys.TAB);
        assertTrue(browser.is("getComputedStyle(document.activeElement).outlineStyle === 'solid'"));
        browser.run("document.getElementById('settings').open = true");
        browser.set("loop", "0");
        browser.run(axe);
        assertEquals(List.of(), serious(CHART_ONCE, ""), "light");
        browser.set("light", "dark");
        assertEquals(List.of(), serious(CHART_ONCE, "runOnly: ['color-contrast']"), "nothing but the colours are others in the dark");
        // on a phone, with a loop marked, at a tempo that is counted otherwise; of each word of the chart it would look anew
        browser.screen(360, 740, true);
        browser.run("practice.setTempo(practice.most())");
        assertEquals(List.of(), serious("{ exclude: [['svg']] }", ""), "phone");
    }

    /** What axe-core finds serious or worse. */
    private static Object serious(String where, String what) {
        return browser.await("axe.run(" + where + ", { resultTypes: ['violations'], " + what + " }).then((r) => done(r.violations.filter((v) => ['serious', 'critical']"
                + ".includes(v.impact)).map((v) => v.id + ': ' + v.nodes.map((n) => n.target.join(' ')).join(', '))))");
    }

    /** The page goes along with what is played: smoothly, or, where less motion is wanted, in one step. */
    @Test
    void motionScreensAndPaper() throws IOException {
        browser.openNew(dense);
        String follow = "const was = window.scrollTo; let how = ''; window.scrollTo = (to) => { how = to.behavior; };"
                + " practice.chart.follow(practice.chart.bars.get('20')[0]); window.scrollTo = was; return how";
        for (String wanted : List.of("reduce", "no-preference")) {
            browser.driver().executeCdpCommand("Emulation.setEmulatedMedia",
                    Map.of("features", List.of(Map.of("name", "prefers-reduced-motion", "value", wanted))));
            assertEquals(wanted.equals("reduce") ? "auto" : "smooth", browser.run(follow), wanted);
            assertEquals(0, browser.number("[...document.querySelectorAll('*')].filter((e) => { const s = getComputedStyle(e);"
                    + " return s.animationName !== 'none' || parseFloat(s.transitionDuration) > 0; }).length"), "nothing else moves");
        }
        browser.driver().executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", List.of()));
        // tablets and phones
        for (int[] size : new int[][] {{768, 1024}, {1024, 768}}) {
            browser.screen(size[0], size[1], true);
            assertEquals("wide", browser.text("document.querySelector('.pages').dataset.drawing"));
            assertTrue(browser.number("document.documentElement.scrollWidth") <= size[0]);
            assertTrue(browser.number("document.getElementById('stand').offsetHeight") < size[1] / 4.0);
        }
        browser.screen(740, 360, true);
        assertTrue(browser.number("document.getElementById('stand').offsetHeight") < 120, "a phone that lies on its side");
        browser.set("size", "large");
        assertEquals("narrow", browser.text("document.querySelector('.pages').dataset.drawing"), "large print is the narrow drawing");
        // printed on a phone it is the chart of a sheet
        browser.screen(360, 740, true);
        assertEquals(browser.number("document.getElementById('wide').textContent.split('<svg').length - 1"), printed());
    }

    /** The pages of the chart on A4, without what is for the screen. */
    private static int printed() throws IOException {
        String pdf = String.valueOf(browser.driver().executeCdpCommand("Page.printToPDF",
                Map.of("preferCSSPageSize", false, "paperWidth", 8.27, "paperHeight", 11.69)).get("data"));
        try (PDDocument printed = Loader.loadPDF(Base64.getDecoder().decode(pdf))) {
            String text = new PDFTextStripper().getText(printed);
            assertTrue(text.contains("Eleven Lanterns") && text.contains("quintuplets"), text);
            assertFalse(text.contains("Tap") || text.contains("JavaScript"), "no controls");
            return printed.getNumberOfPages();
        }
    }

    /** Where scripts are kept off it is the chart with its counts, to be read and to be printed, and says what is missing. */
    @Test
    void withoutScripts() throws IOException {
        browser.driver().executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", true));
        try {
            browser.openAgain(dense);
            assertEquals("undefined", browser.text("typeof window.practice"));
            String seen = "[...document.querySelectorAll('%s')].filter((e) => e.getClientRects().length).length";
            for (int width : new int[] {984, 360}) {
                browser.driver().executeCdpCommand("Emulation.setDeviceMetricsOverride",
                        Map.of("width", width, "height", 740, "deviceScaleFactor", 1, "mobile", true));
                String drawing = width == 360 ? "#narrow" : "#wide";
                assertTrue(browser.number(String.format(seen, drawing + " text.count")) > 200, drawing);
                assertEquals(browser.number(String.format(seen, "text.count")), browser.number(String.format(seen, drawing + " text.count")));
                assertEquals(0, browser.number(String.format(seen, "button, select, input")), "nothing that would do nothing");
                assertEquals(1, browser.number(String.format(seen, "header noscript p")));
                assertTrue(browser.number("document.documentElement.scrollWidth") <= width);
            }
            assertEquals(browser.number("document.querySelectorAll('#wide svg').length"), printed());
        } finally {
            browser.driver().executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", false));
        }
    }
}
