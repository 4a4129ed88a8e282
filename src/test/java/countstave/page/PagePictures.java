package countstave.page;

import countstave.CountedScore;
import countstave.chart.ChartOptions;
import countstave.practice.Plans;
import countstave.voice.Speaker;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.OutputType;

/** Takes the pictures of {@code docs/page.md} anew while the page plays. On request only: {@code mvn -q test -Dtest=PagePictures}. */
class PagePictures {

    @TempDir
    Path folder;

    @Test
    void takeAnew() throws IOException {
        CountedScore counted = Plans.counted("dense");
        Path page = folder.resolve("dense.html");
        try (Writer out = Files.newBufferedWriter(page)) {
            new PracticePage(counted.score(), Plans.of(counted), ChartOptions.standard(), Speaker.Choice.DEFAULT).write("", out);
        }
        try (Browser browser = Browser.open(folder.resolve("profile"))) {
            browser.openNew(page);
            browser.screen(984, 912, false);
            browser.run("document.documentElement.style.scrollBehavior = 'auto'; window.scrollTo = () => { }");
            browser.set("loop", "0");
            browser.run("practice.setTempo(31); document.querySelectorAll('rect.bar')[10].scrollIntoView(); scrollBy(0, -40)");
            take(browser, "bar.place === 12 && c.count.index === practice.line.bars[12].counts.length - 1", "page-tablet.png");
            browser.screen(984, 912, false);
            browser.run("practice.setTempo(126); document.querySelectorAll('rect.bar')[0].scrollIntoView(); scrollBy(0, -150)");
            browser.run("practice.chooseLoop('whole'); practice.setTempo(126)");
            take(browser, "bar.place === 2 && c.count.index === 4", "page-fast.png");
            browser.set("light", "dark");
            browser.screen(360, 740, true);
            browser.set("loop", "0");
            browser.run("practice.setTempo(31); practice.chart.bars.get('12')[0].scrollIntoView(); scrollBy(0, -60)");
            take(browser, "bar.place === 12 && c.count.index === 3", "page-phone.png");
        }
    }

    /** While this count is lit. */
    private static void take(Browser browser, String when, String name) throws IOException {
        browser.at("#play").click();
        browser.await("const look = () => { const c = practice.player.count(); if (c && c.count." + when
                + ") { done(); } else { setTimeout(look, 5); } }; look();");
        Files.write(Path.of("docs", name), browser.driver().getScreenshotAs(OutputType.BYTES));
        browser.run("practice.player.stop()");
    }
}
