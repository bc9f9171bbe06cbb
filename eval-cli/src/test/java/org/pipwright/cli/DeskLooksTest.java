package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.ForcedColors;
import com.microsoft.playwright.options.Media;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.cli.desk.DeskServer;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.record.RecordText;

/** The desk's pages from a phone to a 4K projector, light and dark, printed and in forced colours. */
class DeskLooksTest {
    private static final String BOARD = "/board?roll=6-2&play=24/18+13/11&ahead=0";
    private static final String CLASS = "/class?roll=6-2&ahead=0&guesses=2:+24/18+13/11&answer=shown";

    @TempDir
    static Path folder;

    private static Browser browser;
    private static DeskServer server;
    private static String base;

    @BeforeAll
    static void start() {
        browser = Browser.start();
        server = TestDesk.open(
                folder,
                name -> Knowledge.of(TestNet.MODEL),
                Map.of("evening.txt", RecordText.parse(RecordPageTest.TEXT)),
                Map.of());
        base = server.address().substring(0, server.address().indexOf("/?"));
    }

    @AfterAll
    static void stop() {
        if (server != null) {
            server.close();
            browser.close();
        }
    }

    private static BrowserContext context(int width, int height, ColorScheme colours) {
        BrowserContext context = browser.chromium()
                .newContext(
                        new NewContextOptions().setViewportSize(width, height).setColorScheme(colours));
        context.newPage().navigate(server.address());
        return context;
    }

    private static String fill(Page page, String selector) {
        return (String) page.evaluate("selector => getComputedStyle(document.querySelector(selector)).fill", selector);
    }

    /** Nothing sticks out of the page, and from a desk's screen on no column is cut. */
    @ParameterizedTest
    @CsvSource({"390, 800, DARK", "1280, 800, LIGHT", "1920, 1080, DARK", "3840, 2160, LIGHT"})
    void everythingFits(int width, int height, ColorScheme colours) {
        try (BrowserContext context = context(width, height, colours)) {
            Page page = context.pages().get(0);
            page.fill("[name=name0]", "Ada whose name is as long as one can be");
            page.selectOption("[name=who1]", "");
            page.getByText("Sit down").click();
            page.waitForSelector("#table");
            page.keyboard().press("r");
            page.waitForSelector("#play");
            String table = page.url().substring(base.length());
            for (String path : List.of("/", BOARD, CLASS, "/practice", table, "/records/1")) {
                page.navigate(base + path);
                if (path.equals(BOARD) || path.equals(CLASS)) {
                    page.waitForSelector("#answer .plays tbody tr");
                }
                int wide = ((Number) page.evaluate("() => document.documentElement.scrollWidth")).intValue();
                assertTrue(wide <= width, path + " is " + wide + " wide");
                if (width >= 1280) {
                    Object cut = page.evaluate("() => [...document.querySelectorAll('.wide-table')]"
                            + ".filter(each => each.scrollWidth > each.clientWidth)"
                            + ".map(each => each.ariaLabel + ' ' + each.clientWidth + ' of ' + each.scrollWidth)");
                    assertEquals(List.of(), cut, path);
                }
                // A wider window changes no markup and no colour, and the two smaller have both themes.
                if (width <= 1280) {
                    Browser.requireAccessible(page);
                }
            }
        }
    }

    /** In the dark the board is dark too, but not on paper. */
    @Test
    void boardsFollowTheColours() {
        try (BrowserContext context = context(1280, 900, ColorScheme.DARK)) {
            Page page = context.pages().get(0);
            page.navigate(base + BOARD);
            page.waitForSelector(".board svg .field");
            String paper = (String) page.evaluate("() => getComputedStyle(document.body).backgroundColor");
            assertEquals(paper, fill(page, ".board svg > rect"), "the board's paper is the page's");
            assertEquals("rgb(236, 231, 220)", fill(page, ".board svg .number"));
            page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
            assertEquals("rgb(252, 251, 248)", fill(page, ".board svg > rect"));
            assertEquals("rgb(43, 50, 59)", fill(page, ".board svg .number"));
            for (String hidden : List.of(".tools", ".side", ".places")) {
                assertEquals(
                        "none",
                        page.evaluate("each => getComputedStyle(document.querySelector(each)).display", hidden),
                        hidden);
            }
            assertTrue(page.locator("#answer .plays").isVisible(), "the answer is printed");
            assertFalse(page.locator("#games").isVisible());
            assertFalse(page.locator("#answer .tickbox").first().isVisible());
        }
    }

    /** Where the user chooses all colours, boards keep theirs, for the sides must stay apart, and the place is marked. */
    @Test
    void forcedColours() {
        try (BrowserContext context = context(1280, 900, ColorScheme.LIGHT)) {
            Page page = context.pages().get(0);
            page.emulateMedia(new Page.EmulateMediaOptions().setForcedColors(ForcedColors.ACTIVE));
            page.navigate(base + "/board?pick=6&ahead=0");
            page.waitForSelector("#at-6[aria-current]");
            assertEquals("rgb(35, 72, 95)", fill(page, ".board svg .checker.mine"));
            assertEquals("rgb(248, 230, 188)", fill(page, ".board svg .checker.theirs"));
            assertEquals(
                    "solid", page.evaluate("() => getComputedStyle(document.getElementById('at-6')).outlineStyle"));
            Browser.requireAccessible(page);
        }
    }
}
