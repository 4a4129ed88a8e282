package countstave.page;

import countstave.CountedScore;
import countstave.chart.ChartOptions;
import countstave.practice.Plans;
import countstave.voice.Speaker;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * How long a page of {@code -Dpage.bars=300} bars as dense as the demo score needs until it can be played, and how evenly it
 * scrolls. On request only: {@code mvn -q test -Dtest=PageBenchmark}.
 */
class PageBenchmark {

    private static final int BARS = Integer.getInteger("page.bars", 300);
    private static final int TIMES = 5;
    private static final Pattern BAR = Pattern.compile("<measure number=\"[^\"]*\"(?s:.*?)</measure>");

    @TempDir
    Path folder;

    /** The bars of the demo score again and again. */
    private static String score() throws IOException {
        String dense = Files.readString(Path.of("scores/dense.musicxml"));
        List<String> bars = new ArrayList<>();
        Matcher bar = BAR.matcher(dense);
        int end = 0;
        while (bar.find()) {
            bars.add(bar.group());
            end = bar.end();
        }
        StringBuilder more = new StringBuilder(dense.substring(0, end));
        for (int i = bars.size(); i < BARS; i++) {
            more.append(bars.get(i % bars.size()).replaceFirst("number=\"[^\"]*\"", "number=\"" + (i + 1) + "\""));
        }
        return more.append(dense.substring(end)).toString();
    }

    @Test
    void opening() throws IOException {
        CountedScore counted = Plans.countedXml(score());
        Path page = folder.resolve("long.html"); 
        try (Writer out = Files.newBufferedWriter(page)) {
            new PracticePage(counted.score(), Plans.of(counted), ChartOptions.standard(), Speaker.Choice.DEFAULT).write("", out);
        }
        System.out.printf(Locale.ROOT, "page: %d bars, %.1f MB%n", BARS, Files.size(page) / 1e6);
        for (int i = 0; i < TIMES; i++) {
            // a browser of its own each time, as one opens a page for the first time
            try (Browser browser = Browser.open(folder.resolve("profile" + i))) {
                if (Boolean.getBoolean("page.profile")) {
                    browser.driver().executeCdpCommand("Profiler.enable", Map.of());
                    browser.driver().executeCdpCommand("Profiler.start", Map.of());
                }
                browser.openAgain(page);
                browser.until("window.practice && practice.ready !== undefined");
                if (Boolean.getBoolean("page.profile")) {
                    Files.writeString(Path.of("/tmp/page.cpuprofile." + i), new org.openqa.selenium.json.Json().toJson(
                            browser.driver().executeCdpCommand("Profiler.stop", Map.of())));
                }
                System.out.println("page: " + browser.text("JSON.stringify({ ready: Math.round(practice.opened), ink: performance.getEntriesByType("
                        + "'paint').map((p) => Math.round(p.startTime)), interactive: Math.round(performance.timing.domInteractive"
                        + " - performance.timing.navigationStart) })"));
                Object frames = browser.await("const times = []; let last = performance.now(); const step = (now) => { times.push(now - last);"
                        + " last = now; window.scrollBy(0, 90); if (times.length < 240) { requestAnimationFrame(step); } else { done(times.slice(1)"
                        + ".map((t) => Math.round(t)).sort((a, b) => b - a).slice(0, 8).join(' ')); } }; requestAnimationFrame(step);");
                System.out.println("page: the longest frames of 239 while it scrolls, ms: " + frames);
            }
        }
    }
}
