package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Mouse;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.cli.desk.DeskServer;
import org.pipwright.cli.desk.DeskSetup;
import org.pipwright.engine.judge.Knowledge;

/** The board of the desk in a real browser: set up by mouse, finger and keyboard. */
class BoardPageTest {
    @TempDir
    static Path folder;

    private static DeskServer server;
    private static String base;
    private static Browser browser;

    private final List<String> complaints = new ArrayList<>();

    @BeforeAll
    static void start() {
        browser = Browser.start();
        server = new DeskServer(new DeskSetup(0, List.of("tiny"), name -> Knowledge.of(TestNet.MODEL), folder, 1))
                .awaitNet();
        base = server.address().substring(0, server.address().indexOf("/?"));
    }

    @AfterAll
    static void stop() {
        if (server != null) {
            server.close();
            browser.close();
        }
    }

    private Page open(int width, int height, boolean touch, String path) {
        BrowserContext context = browser.chromium()
                .newContext(
                        new NewContextOptions().setViewportSize(width, height).setHasTouch(touch));
        Page page = context.newPage();
        page.onConsoleMessage(message -> complaints.add(message.text()));
        page.onPageError(complaints::add);
        page.navigate(server.address());
        page.navigate(base + path);
        return page;
    }

    @AfterEach
    void nothingWasComplainedOf() {
        assertEquals(List.of(), complaints);
    }

    /** Waits until the address ends so, and the page has been changed for it. */
    private static void at(Page page, String query) {
        page.waitForFunction(
                "query => location.search === query && document.getElementById('desk').dataset.query === query.slice(1)",
                query.isEmpty() ? "" : "?" + query);
    }

    private static void drag(Page page, String from, String to) {
        BoundingBox start = page.locator(from).boundingBox();
        BoundingBox end = page.locator(to).boundingBox();
        page.mouse().move(start.x + start.width / 2, start.y + start.height / 2);
        page.mouse().down();
        page.mouse().move(end.x + end.width / 2, end.y + end.height / 2, new Mouse.MoveOptions().setSteps(4));
        page.mouse().up();
    }

    @Test
    void byMouse() {
        Page page = open(1200, 900, false, "/board");
        Browser.requireAccessible(page);
        page.evaluate(Browser.LISTENING);
        drag(page, "#at-6", "#at-5");
        String moved = "position=1@5+4@6+3@8+5@13+2@24+/+5@6+3@8+5@13+2@24";
        at(page, moved);
        String told = page.evaluate("() => heard[0]").toString();
        assertTrue(told.startsWith("One checker from point 6 to point 5. At "), told);
        assertEquals("You: 166 pips, 15 on the board", page.textContent(".sides li"));
        page.click("[data-step=back]");
        at(page, "");
        page.click("[data-step=on]");
        at(page, moved);
        page.goBack();
        at(page, "");
        drag(page, "#at-24", "#at-off");
        at(page, "position=5@6+3@8+5@13+1@24+/+5@6+3@8+5@13+2@24");
        drag(page, "#at-off", "#at-bar");
        at(page, "position=5@6+3@8+5@13+1@24+1@bar+/+5@6+3@8+5@13+2@24");
        page.evaluate(Browser.LISTENING);
        drag(page, "#at-6", "#at-12");
        page.waitForSelector(".stage .error");
        page.waitForFunction("() => heard.some(each => each.startsWith('the other side holds point 12'))");
        page.click("#at-bar");
        page.waitForSelector("#at-bar[aria-current]");
        Browser.requireAccessible(page);
        page.click("#at-4");
        at(page, "position=1@4+5@6+3@8+5@13+1@24+/+5@6+3@8+5@13+2@24");
        page.context().close();
    }

    @Test
    void byKeyboardAlone() {
        Page page = open(1200, 900, false, "/board?position=off+/+off");
        page.focus("#at-13");
        for (String key : List.of("ArrowDown", "ArrowRight", "ArrowRight", "4")) {
            page.keyboard().press(key);
        }
        at(page, "position=4@10+/+off");
        assertEquals("at-10", page.evaluate("() => document.activeElement.id"), "the keyboard stays where it was");
        page.keyboard().press("ArrowUp");
        page.keyboard().press("Shift+Digit2");
        at(page, "position=4@10+/+2@10");
        page.keyboard().press("Control+z");
        at(page, "position=4@10+/+off");
        page.keyboard().press("Control+y");
        at(page, "position=4@10+/+2@10");
        page.fill("#text", "5@6 / 5@19");
        page.keyboard().press("Enter");
        page.waitForFunction("() => document.getElementById('text-error').textContent !== ''");
        assertEquals("5@6 / 5@19", page.inputValue("#text"), "what was typed can be mended");
        Browser.requireAccessible(page);
        page.fill("#text", "start");
        page.keyboard().press("Enter");
        at(page, "");
        page.context().close();
    }

    @Test
    void diceCubeAndScore() {
        Page page = open(1200, 900, false, "/board");
        page.selectOption("#roll", "3-1");
        at(page, "roll=3-1");
        page.getByText("Leave out").click();
        at(page, "");
        page.getByText("Throw").click();
        page.waitForFunction("() => /^\\?roll=[1-6]-[1-6]$/.test(location.search)");
        page.getByText("Leave out").click();
        at(page, "");
        page.selectOption("#for", "match");
        at(page, "for=match&away=5,5");
        page.selectOption("#cube", "2");
        page.waitForFunction("() => document.getElementById('stakes-error').textContent !== ''");
        page.selectOption("#owner", "me");
        at(page, "for=match&away=5,5&cube=2&owner=me");
        page.getByText("Swap sides").click();
        at(page, "for=match&away=5,5&cube=2&owner=them");
        page.getByText("Hide pips").click();
        page.waitForFunction("() => location.search.endsWith('pips=hidden')");
        assertFalse(page.content().contains("167"), "pips are to be counted");
        page.getByText("Mirror").click();
        page.waitForSelector(".left #at-1");
        double left = page.locator("#at-1").boundingBox().x;
        double number = page.locator("svg text.number").first().boundingBox().x;
        assertEquals(number, left, 25, "places lie over the picture");
        page.context().close();
    }

    /** What is chosen in the very moment that another answer comes is asked as well. */
    @Test
    void whatComesIsListenedToAtOnce() {
        Page page = open(1200, 900, false, "/board");
        page.evaluate("""
                () => new MutationObserver((changes, observer) => {
                    observer.disconnect();
                    const roll = document.getElementById('roll');
                    roll.value = '6-4';
                    roll.dispatchEvent(new Event('change', {bubbles: true}));
                }).observe(document.querySelector('main'), {childList: true})""");
        page.selectOption("#for", "points");
        at(page, "roll=6-4&for=points");
        page.context().close();
    }

    /** A play is chosen and explained, and a rollout is stopped before it has said anything. */
    @Test
    void asking() {
        Page page = open(1300, 900, false, "/board?roll=3-1&ahead=1");
        page.waitForFunction("() => document.querySelector('#answer .quiet').textContent.startsWith('lookahead 1')");
        assertTrue(page.textContent("#said").startsWith("At lookahead 1: best is "), page.textContent("#said"));
        page.locator(".plays a").nth(1).click();
        page.waitForSelector(".play-shown .rolls tbody tr:nth-child(21)");
        assertTrue(page.url().contains("&play="), page.url());
        assertTrue(page.locator(".stage svg path").count() > 0, "arrows");
        assertTrue(page.locator(".why li").count() > 0);
        Browser.requireAccessible(page);
        page.getByText("Roll out").click();
        page.click("[data-stop]");
        page.waitForFunction("() => document.getElementById('said').textContent === 'Stopped.'");
        assertEquals("", page.innerHTML("#stream"), "nothing is listened to any more");
        page.context().close();
    }

    /** Whatever changes is heard once: not twice, and a rollout not with each of its steps. */
    @Test
    void everyChangeIsToldOnce() {
        Page page = open(1300, 900, false, "/board?position=2@6+1@bar+/+3@4+2@20&roll=6-2&ahead=0");
        page.evaluate(Browser.LISTENING);
        page.selectOption("#roll", "5-2");
        assertEquals(1, heard(page, "At lookahead 0: best is "));
        page.locator(".plays a").nth(1).click();
        assertEquals(1, heard(page, ", cost "));
        page.click("[data-step=back]");
        assertEquals(1, heard(page, "At lookahead 0: best is "));
        page.selectOption("#ahead", "1");
        assertEquals(2, heard(page, "At lookahead 1: best is "), "the answer at once, and the deeper one");
        drag(page, "#at-6", "#at-5");
        assertEquals(1, heard(page, "the other side holds"));
        page.locator(".plays input").nth(1).check();
        page.selectOption("#games", "1296");
        page.getByText("Roll out").click();
        page.waitForFunction("() => !document.querySelector('[data-stop]') && document.querySelector('#standing tr')");
        assertEquals(2, heard(page, "1296 games: "), "its begin and its end");
        page.context().close();
    }

    /** How many changes were heard until one with certain words, and in the moment after it. */
    private static int heard(Page page, String words) {
        page.waitForFunction("words => heard.some(each => each.includes(words))", words);
        page.waitForTimeout(150);
        List<?> all = (List<?>) page.evaluate("() => heard.splice(0)");
        assertTrue(all.get(all.size() - 1).toString().contains(words), all.toString());
        assertEquals(all.size(), new HashSet<>(all).size(), all.toString());
        return all.size();
    }

    /** Both of two plays are rolled out to the end, on a phone. */
    @Test
    void rollingOut() {
        Page page = open(390, 800, false, "/board?position=2@6+1@bar+/+3@4+2@20&roll=6-2&ahead=0");
        for (int play = 0; play < 2; play++) {
            page.locator(".plays input").nth(play).check();
        }
        page.selectOption("#games", "324");
        page.getByText("Roll out").click();
        page.waitForFunction("() => document.getElementById('said').textContent.startsWith('324 games: ')");
        assertEquals(2, page.locator("#standing tbody tr").count());
        assertEquals(0, page.locator("[data-stop]").count(), "nothing is left to stop");
        Browser.requireAccessible(page);
        int wide = ((Number) page.evaluate("() => document.documentElement.scrollWidth")).intValue();
        assertTrue(wide <= 390, "the page is " + wide + " wide");
        page.context().close();
    }

    /** A class guesses before the answer is uncovered. */
    @Test
    void aClass() {
        Page page = open(390, 800, false, "/class?roll=3-1&ahead=0");
        page.fill("#guess", "13/1");
        page.keyboard().press("Enter");
        page.waitForFunction("() => document.getElementById('said').textContent.includes('13/1')");
        assertTrue(complaints.remove(0).contains("422"), "the browser takes note of the refusal");
        for (String guess : List.of("6/5 8/5", "24/20")) {
            page.fill("#guess", guess);
            page.keyboard().press("Enter");
            page.waitForSelector(".hands tr:nth-child(" + (guess.equals("24/20") ? 2 : 1) + ")");
        }
        page.getByLabel("One more for 8/5 6/5").click();
        page.waitForFunction("() => document.querySelectorAll('.hands td')[1].textContent === '2'");
        assertEquals(0, page.locator("#answer, .stage svg path").count(), "nothing is given away");
        Browser.requireAccessible(page);
        page.getByText("Uncover the answer").click();
        page.waitForSelector("#answer .plays");
        assertTrue(page.locator(".stage svg path").count() > 0, "the best play is shown");
        assertEquals(2, page.locator(".hands td:nth-child(6)").count(), "grades of the guesses");
        Browser.requireAccessible(page);
        int wide = ((Number) page.evaluate("() => document.documentElement.scrollWidth")).intValue();
        assertTrue(wide <= 390, "the page is " + wide + " wide");
        page.navigate(base + "/class?cube=2&owner=me&ahead=0&guesses=4: double, take&answer=shown");
        page.waitForSelector(".hands tr:nth-child(3) td:nth-child(6)");
        page.navigate(base + "/class?for=points&ahead=0&answer=shown");
        page.waitForSelector("#answer table");
        assertEquals(0, page.locator(".hands").count());
        page.context().close();
    }

    /** On a phone: everything fits, and a finger drags. */
    @Test
    void byFinger() {
        Page page = open(390, 800, true, "/board");
        Browser.requireAccessible(page);
        int wide = ((Number) page.evaluate("() => document.documentElement.scrollWidth")).intValue();
        assertTrue(wide <= 390, "the page is " + wide + " wide");
        BoundingBox from = page.locator("#at-8").boundingBox();
        BoundingBox to = page.locator("#at-7").boundingBox();
        CDPSession devtools = page.context().newCDPSession(page);
        touch(devtools, "touchStart", from);
        touch(devtools, "touchMove", to);
        touch(devtools, "touchEnd", null);
        at(page, "position=5@6+1@7+2@8+5@13+2@24+/+5@6+3@8+5@13+2@24");
        page.context().close();
    }

    private static void touch(CDPSession devtools, String type, BoundingBox at) {
        JsonArray points = new JsonArray();
        if (at != null) {
            JsonObject point = new JsonObject();
            point.addProperty("x", at.x + at.width / 2);
            point.addProperty("y", at.y + at.height / 2);
            points.add(point);
        }
        JsonObject event = new JsonObject();
        event.addProperty("type", type);
        event.add("touchPoints", points);
        devtools.send("Input.dispatchTouchEvent", event);
    }
}
