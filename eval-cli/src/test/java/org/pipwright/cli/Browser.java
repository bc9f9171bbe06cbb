package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.deque.html.axecore.args.AxeRunOptions;
import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * An installed Chromium without a window, driven through an installed Node. Where one of them is missing, tests that need
 * it are skipped, with the reason, or fail: see {@link Needed}.
 */
final class Browser implements AutoCloseable {
    /**
     * The list that drops down from Chromium's address bar is a page of its own in every window, in which nobody types here;
     * it takes more processor time than most of the pages that are looked at.
     */
    private static final String NO_ADDRESS_BAR =
            "--disable-features=WebUIOmniboxPopup,WebUIOmniboxAimPopup,WebUIOmniboxFullPopup";

    private static final List<String> CHROMIUM = List.of("chromium", "chromium-browser", "google-chrome", "chrome");

    /** Keeps in {@code heard} what a page says to those who do not see it: live regions, as often as they change. */
    static final String LISTENING = "() => { window.heard = []; new MutationObserver((all) => {"
            + " const told = new Set(all.map(each => (each.target.closest ? each.target : each.target.parentElement)"
            + "?.closest('[role=status], [role=alert], [aria-live]')).filter(each => each && each.textContent.trim()));"
            + " for (const each of told) heard.push(each.textContent.replace(/\\s+/g, ' ').trim());"
            + " }).observe(document.body, {childList: true, characterData: true, subtree: true}); }";

    private static com.microsoft.playwright.Browser shared;

    private final com.microsoft.playwright.Browser chromium;

    private Browser(com.microsoft.playwright.Browser chromium) {
        this.chromium = chromium;
    }

    /**
     * The browser of this JVM, started at first need: a start takes longer than most tests. It ends with the JVM, and the
     * Node between them with it. Pages of one test class share nothing with those of another but the process.
     */
    static Browser start() {
        shared = shared == null || !shared.isConnected() ? launched() : shared;
        assertEquals(List.of(), shared.contexts(), "another class left its pages open");
        return new Browser(shared);
    }

    private static com.microsoft.playwright.Browser launched() {
        String browser = found("Chromium", CHROMIUM);
        String node = found("Node", List.of("node", "nodejs"));
        Playwright playwright = Playwright.create(new Playwright.CreateOptions()
                .setEnv(Map.of("PLAYWRIGHT_NODEJS_PATH", node, "PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        return playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(Path.of(browser))
                        .setArgs(List.of(NO_ADDRESS_BAR)));
    }

    /** The first of some programs that is on the path. */
    private static String found(String what, List<String> names) {
        return names.stream()
                .flatMap(name -> Arrays.stream(System.getenv("PATH").split(File.pathSeparator))
                        .map(folder -> Path.of(folder, name)))
                .filter(Files::isExecutable)
                .findFirst()
                .map(Path::toString)
                .orElseGet(() -> Needed.missing("no " + what + " on the path: the page is not tested in a browser"));
    }

    /**
     * Fails if axe finds anything that keeps people out. Pages have no frames, so the page alone is looked at, and only
     * what is wrong is written down: that takes a third of the time.
     */
    static void requireAccessible(Page page) {
        List<String> found = new ArrayList<>();
        AxeRunOptions wrong = new AxeRunOptions();
        wrong.setResultTypes(List.of("violations"));
        new AxeBuilder(page)
                .setLegacyMode(true)
                .options(wrong)
                .analyze()
                .getViolations()
                .forEach(each -> found.add(each.getId() + ": " + each.getHelp() + " "
                        + each.getNodes().get(0).getHtml()));
        assertEquals(List.of(), found);
    }

    com.microsoft.playwright.Browser chromium() {
        return chromium;
    }

    /** Closes all pages that are still open. */
    @Override
    public void close() {
        List.copyOf(chromium.contexts()).forEach(BrowserContext::close);
    }
}
