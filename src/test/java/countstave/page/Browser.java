package countstave.page;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** Debian's Chromium without a window. Nothing is downloaded: browser and driver are those of the machine. */
final class Browser implements AutoCloseable {

    private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
    private static final Path DRIVER = Path.of("/usr/bin/chromedriver");

    /**
     * What a page under test does not need of a browser: the list below its address line, which is a page with a process of its own (two
     * fifths of what a start costs), processes held ready for the next page, and pages kept for going back to.
     */
    private static final String UNUSED = "WebUIOmniboxPopup,WebUIOmniboxAimPopup,PreloadTopChromeWebUI,SpareRendererForSitePerProcess,"
            + "BackForwardCache,Translate,OptimizationHints";

    private final ChromeDriver driver;

    private Browser(ChromeDriver driver) {
        this.driver = driver;
    }

    /** Skips the test where there is no browser, unless the machine says that there must be one (.ci/run does). */
    static Browser open(Path profile) {
        boolean there = Files.isExecutable(CHROMIUM) && Files.isExecutable(DRIVER);
        String missing = "no browser: install chromium and chromium-driver, then the practice page is tested in it";
        if ("required".equals(System.getenv("COUNTSTAVE_BROWSER"))) {
            assertTrue(there, missing);
        }
        assumeTrue(there, missing);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(CHROMIUM.toString());
        options.addArguments("--headless=new", "--no-sandbox", "--disable-dev-shm-usage", "--window-size=1100,900",
                "--autoplay-policy=no-user-gesture-required", "--user-data-dir=" + profile, "--disable-gpu",
                "--mute-audio", "--disable-extensions", "--disable-background-networking", "--disable-component-update",
                "--disable-features=" + UNUSED);
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        options.setCapability("goog:loggingPrefs", logs);
        ChromeDriverService service = new ChromeDriverService.Builder().usingDriverExecutable(DRIVER.toFile())
                .usingAnyFreePort().withSilent(true).build();
        ChromeDriver driver = new ChromeDriver(service, options);
        driver.manage().timeouts().scriptTimeout(Duration.ofSeconds(90));
        return new Browser(driver);
    }

    ChromeDriver driver() {
        return driver;
    }

    /** Opens a page as nobody has seen it before. */
    void openNew(Path page) {
        // all pages of the disk share one storage
        if (driver.getCurrentUrl().startsWith("file:")) {
            run("localStorage.clear()");
        }
        driver.get(page.toUri().toString());
    }

    /** Opens a page as it was left. */
    void openAgain(Path page) {
        driver.get(page.toUri().toString());
    }

    /** What a script returns; {@code arguments[0]} … are its values. */
    Object run(String script, Object... values) {
        return driver.executeScript(script, values);
    }

    /** What a script hands to {@code done} in the end. */
    Object await(String script, Object... values) {
        return driver.executeAsyncScript("const done = arguments[arguments.length - 1];" + script, values);
    }

    String text(String script) {
        return String.valueOf(run("return String(" + script + ")"));
    }

    double number(String script) {
        return ((Number) run("return Number(" + script + ")")).doubleValue();
    }

    boolean is(String script) {
        return Boolean.TRUE.equals(run("return !!(" + script + ")"));
    }

    WebElement at(String css) {
        return driver.findElement(By.cssSelector(css));
    }

    /** Sets a control as a person does it. */
    void set(String id, Object value) {
        run("const e = document.getElementById(arguments[0]); if (e.type === 'checkbox') { e.checked = arguments[1]; } else {"
                + " e.value = arguments[1]; } e.dispatchEvent(new Event('input')); e.dispatchEvent(new Event('change'))", id, value);
    }

    /** Waits until something is so, ten seconds at most. */
    void until(String script) {
        assertTrue(Boolean.TRUE.equals(await("const end = performance.now() + 10000; const look = () => { if (" + script
                + ") { done(true); } else if (performance.now() > end) { done(false); } else { setTimeout(look, 20); } }; look();")),
                "never: " + script);
    }

    /** A screen of so many CSS pixels. */
    void screen(int width, int height, boolean touch) {
        driver.executeCdpCommand("Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", touch));
        driver.executeCdpCommand("Emulation.setTouchEmulationEnabled", Map.of("enabled", touch));
        until("innerWidth === " + width);
        // the page waits a moment before it draws anew
        await("setTimeout(done, 300)");
    }

    /** What the page has complained of since it was asked last. */
    List<String> complaints() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream().map(LogEntry::toString).toList();
    }

    @Override
    public void close() {
        driver.quit();
    }
}
