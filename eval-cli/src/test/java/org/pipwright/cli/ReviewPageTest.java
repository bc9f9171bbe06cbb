package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The page of a review, in a real browser without a network. */
class ReviewPageTest {
    @TempDir
    static Path folder;

    private static Browser browser;
    private static String address;

    private BrowserContext context;
    private Page page;
    private final List<String> fetched = new ArrayList<>();
    private final List<String> complaints = new ArrayList<>();

    @BeforeAll
    static void makeThePage() throws IOException {
        browser = Browser.start();
        String example = Files.readString(Path.of("src/docs/evening.txt"));
        Path game = folder.resolve("game.txt");
        Files.writeString(game, example.substring(0, example.indexOf("game 2")));
        Path file = folder.resolve("review.html");
        Run run = Run.of(
                "review", game.toString(), "--lookahead", "0", "--html", file.toString(), "--net", TestNet.path());
        assertEquals(0, run.code(), run.err());
        address = file.toUri().toString();
    }

    @AfterAll
    static void stopBrowser() {
        if (browser != null) {
            browser.close();
        }
    }

    private void open(int width, String turn) {
        context = browser.chromium()
                .newContext(new com.microsoft.playwright.Browser.NewContextOptions()
                        .setOffline(true)
                        .setViewportSize(width, 800));
        page = context.newPage();
        page.onRequest(request -> fetched.add(request.url()));
        page.onConsoleMessage(message -> complaints.add(message.text()));
        page.onPageError(complaints::add);
        page.navigate(address + turn);
    }

    /** Nothing is fetched but the file itself, and the browser has nothing to complain about. */
    @AfterEach
    void closeContext() {
        context.close();
        assertEquals(1, fetched.size(), fetched::toString);
        assertEquals(List.of(), complaints);
    }

    private boolean isOpen(String id) {
        return (Boolean) page.locator("#" + id).evaluate("turn => turn.open");
    }

    @Test
    void aLinkOpensItsTurn() {
        open(1000, "");
        Locator closed = page.locator("details:not([open])").first();
        String id = closed.getAttribute("id");
        page.evaluate("id => { location.hash = id; }", id);
        page.waitForFunction("id => document.getElementById(id).open", id);
        assertTrue(page.locator("#" + id + " figure svg").first().isVisible());
    }

    @Test
    void anAddressWithATurnOpensIt() {
        open(1000, "#g1t3");
        assertTrue(isOpen("g1t3"));
    }

    @Test
    void marksOnTheCurveLeadToTheirTurns() {
        open(1000, "");
        Locator mark = page.locator("svg.curve a").first();
        String id = mark.getAttribute("href").substring(1);
        mark.click();
        page.waitForFunction("id => location.hash === '#' + id", id);
        assertTrue(isOpen(id));
    }

    @Test
    void aTurnOpensByTheKeyboard() {
        open(1000, "");
        Locator closed = page.locator("details:not([open])").first();
        String id = closed.getAttribute("id");
        page.locator("#" + id + " summary").focus();
        page.keyboard().press("Enter");
        assertTrue(isOpen(id));
    }

    @ParameterizedTest
    @ValueSource(ints = {360, 390, 1000})
    void nothingIsWiderThanTheScreen(int width) {
        open(width, "");
        assertEquals(width, page.evaluate("document.documentElement.scrollWidth"));
        assertFalse(page.locator("svg.curve").first().boundingBox().width > width);
        page.locator("details").evaluateAll("all => all.forEach(each => { each.open = true; })");
        assertEquals(
                List.of(),
                page.evaluate("() => [...document.querySelectorAll('td, th, p, b, svg.curve text, figcaption')]"
                        + ".filter(e => e.getBoundingClientRect().width > 1)"
                        + ".filter(e => e.getBoundingClientRect().left < 0"
                        + " || e.getBoundingClientRect().right > innerWidth)"
                        + ".map(e => e.textContent)"),
                "cut off");
    }

    /** What axe-core, the rules of accessibility in a library, finds. */
    @Test
    void screenReadersFindTheirWay() {
        open(1000, "");
        Browser.requireAccessible(page);
    }
}
