package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.cli.desk.DeskServer;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.record.RecordText;
import org.pipwright.engine.review.ReviewSettings;
import org.pipwright.engine.review.Reviews;

/** A record gone through at the desk, in a real browser. */
class RecordPageTest {
    static final String TEXT = String.join(
            "\n",
            "pipwright record 1",
            "players: Ada <b>, Ben",
            "match: 3",
            "",
            "game",
            "Ada <b> 3-1: 8/5 6/5",
            "Ben 6-2: 24/22 13/7  # runs <i>",
            "Ada <b> 4-4: 24/20(2) 13/9(2)",
            "Ben doubles",
            "Ada <b> passes",
            "game",
            "Ben 6-4: 24/14",
            "Ada <b> 5-3: 8/3 6/3",
            "");

    @TempDir
    static Path folder;

    private static Browser browser;
    private static DeskServer server;
    private static String base;

    private final List<String> complaints = new ArrayList<>();

    @BeforeAll
    static void start() {
        browser = Browser.start();
        Knowledge knowledge = Knowledge.of(TestNet.MODEL);
        server = TestDesk.open(folder, name -> knowledge, Map.of("evening <1>.txt", RecordText.parse(TEXT)), Map.of());
        base = server.address().substring(0, server.address().indexOf("/?"));
    }

    @AfterAll
    static void stop() {
        if (server != null) {
            server.close();
            browser.close();
        }
    }

    @AfterEach
    void nothingWasComplainedOf() {
        assertEquals(List.of(), complaints);
    }

    private Page open(int width, ColorScheme colours) {
        BrowserContext context = browser.chromium()
                .newContext(new NewContextOptions().setViewportSize(width, 900).setColorScheme(colours));
        Page page = context.newPage();
        page.onConsoleMessage(message -> complaints.add(message.text()));
        page.onPageError(complaints::add);
        page.navigate(server.address());
        return page;
    }

    private static void at(Page page, String turn) {
        page.waitForFunction(
                "turn => location.search === '?at=' + turn && document.querySelector('.turns [aria-current]').id === 'to-' + turn",
                turn);
    }

    /** By the keyboard alone: the review fills in, turns are stepped through, and mistakes are gone to. */
    @Test
    void byKeyboard() {
        Page page = open(1280, ColorScheme.LIGHT);
        page.getByText("evening <1>.txt").click();
        page.waitForFunction("() => document.querySelector('#game .quiet').textContent.includes('all 6 turns')");
        page.waitForFunction("() => document.querySelector('#stream').children.length === 0");
        assertTrue(page.textContent("#turn .quiet").startsWith("tiny, lookahead 1"), page.textContent("#turn .quiet"));
        assertEquals(1, page.locator("svg.curve").count());
        Browser.requireAccessible(page);
        page.keyboard().press("ArrowRight");
        at(page, "g1t2");
        assertEquals("runs <i>", page.textContent(".note"));
        assertTrue(page.textContent("#said").startsWith("Turn 2, Ben: 6-2: 24/22 13/7"), page.textContent("#said"));
        page.keyboard().press("ArrowLeft");
        at(page, "g1t1");
        List<String> mistakes = mistakes();
        assertTrue(mistakes.size() > 1, "the test's record has mistakes");
        for (String turn : mistakes.subList(mistakes.get(0).equals("g1t1") ? 1 : 0, mistakes.size())) {
            page.keyboard().press("n");
            at(page, turn);
            assertTrue(page.locator("#turn h2 .grade:not(.fine):not(.forced)").count() > 0, turn);
        }
        page.keyboard().press("n");
        page.waitForFunction("() => document.getElementById('said').textContent === 'No mistake after this turn.'");
        page.keyboard().press("p");
        at(page, mistakes.get(mistakes.size() - 2));
        page.goBack();
        at(page, mistakes.get(mistakes.size() - 1));
        page.getByText("Game 2").click();
        at(page, "g2t1");
        page.context().close();
    }

    /** While the review fills in, what stays the same is not told again. */
    @Test
    void aReviewedTurnIsToldOnce() {
        Knowledge knowledge = Knowledge.of(TestNet.MODEL);
        try (DeskServer fresh = TestDesk.open(
                folder.resolve("fresh"), name -> knowledge, Map.of("evening.txt", RecordText.parse(TEXT)), Map.of())) {
            Page page = open(1280, ColorScheme.LIGHT);
            page.addInitScript("document.addEventListener('DOMContentLoaded', " + Browser.LISTENING + ")");
            page.navigate(fresh.address());
            page.getByText("evening.txt").click();
            page.waitForURL("**/records/*");
            page.keyboard().press("ArrowRight");
            at(page, "g1t2");
            page.waitForFunction("() => document.querySelector('#game .quiet').textContent.includes('all 6 turns')");
            page.waitForFunction("() => heard.some(each => each.startsWith('Turn 2, '))");
            List<?> heard = (List<?>) page.evaluate("() => heard");
            assertEquals(new HashSet<>(heard).size(), heard.size(), heard.toString());
            page.context().close();
        }
    }

    /** The turns in which {@code review} finds a mistake, at the same lookahead. */
    private static List<String> mistakes() {
        List<String> found = new ArrayList<>();
        new Reviews(Knowledge.of(TestNet.MODEL), new ReviewSettings(1, 0, 1, true), 1)
                .review(RecordText.parse(TEXT), List.of(), turn -> {}, Progress.NONE)
                .turns()
                .forEach(turn -> {
                    boolean wrong = turn.decisions().stream()
                            .anyMatch(decision -> decision.counted() && decision.points() <= -0.01);
                    if (wrong) {
                        found.add("g" + (turn.moment().game() + 1) + "t"
                                + (turn.moment().turn() + 1));
                    }
                });
        return found;
    }

    @Test
    void onAPhoneInTheDark() {
        Page page = open(390, ColorScheme.DARK);
        page.navigate(base + "/records/1?at=g1t4");
        page.waitForFunction("() => document.querySelector('#stream').children.length === 0");
        Browser.requireAccessible(page);
        int wide = ((Number) page.evaluate("() => document.documentElement.scrollWidth")).intValue();
        assertTrue(wide <= 390, "the page is " + wide + " wide");
        assertTrue(page.textContent("#turn h2").contains("Ada <b> passes"), page.textContent("#turn h2"));
        page.context().close();
    }

    /** Only what the user opened, and what is played at a table, can be gone through. */
    @Test
    void nothingElseIsRead() throws IOException, InterruptedException {
        Files.writeString(folder.resolve("other.txt"), TEXT);
        HttpClient client = HttpClient.newHttpClient();
        HttpResponse<String> entry = client.send(
                HttpRequest.newBuilder(URI.create(server.address())).build(), HttpResponse.BodyHandlers.ofString());
        String cookie = entry.headers().firstValue("Set-Cookie").orElseThrow().split(";")[0];
        for (String path : List.of("0", "2", "other.txt", "..%2Fother.txt", "table-1", "%2Fetc%2Fpasswd")) {
            HttpResponse<String> answer = client.send(
                    HttpRequest.newBuilder(URI.create(base + "/records/" + path))
                            .header("Cookie", cookie)
                            .build(),
                    HttpResponse.BodyHandlers.ofString());
            assertTrue(answer.statusCode() == 404 || answer.statusCode() == 400, path + ": " + answer.statusCode());
        }
        HttpResponse<String> turn = client.send(
                HttpRequest.newBuilder(URI.create(base + "/records/1?at=nowhere"))
                        .header("Cookie", cookie)
                        .build(),
                HttpResponse.BodyHandlers.ofString());
        assertEquals(200, turn.statusCode());
        assertTrue(turn.body().contains("Ada &lt;b&gt;") && !turn.body().contains("<b>,"), "escaped");
    }
}
