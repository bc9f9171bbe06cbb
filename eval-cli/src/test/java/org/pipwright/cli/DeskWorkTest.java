package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.cli.desk.DeskServer;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.record.RecordText;

/** Long work at the desk: it goes on while somebody looks, and ends with the page. The net takes its time, and counts. */
class DeskWorkTest {
    private static final long THOUGHT_NANOS = 100_000;

    /** Pages in the background, which would leave no connection if each kept one. */
    private static final int CONNECTIONS = 6;

    /** Counts what a page listens to. */
    private static final String COUNTING =
            "(() => { const Real = EventSource; window.listening = new Set(); window.most = 0;"
                    + " window.EventSource = class extends Real {"
                    + " constructor(...all) { super(...all); listening.add(this); window.most = Math.max(most, listening.size); }"
                    + " close() { listening.delete(this); super.close(); } }; })();";

    /** Lets a test say whether the page is hidden, from the start or later. */
    private static final String HIDING = "(() => { let gone = %s;"
            + " Object.defineProperty(document, 'hidden', {get: () => gone});"
            + " window.hide = (now) => { gone = now; document.dispatchEvent(new Event('visibilitychange')); }; })();";

    private static final AtomicLong ASKED = new AtomicLong();

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
                name -> Knowledge.of(DeskWorkTest::slow),
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

    private static PositionEvaluator slow() {
        PositionEvaluator net = new NetworkEvaluator(TestNet.MODEL);
        return (planes, at, out, outAt) -> {
            ASKED.incrementAndGet();
            LockSupport.parkNanos(THOUGHT_NANOS);
            net.evaluate(planes, at, out, outAt);
        };
    }

    /** How often the net is asked in a third of a second. */
    private static long asked() throws InterruptedException {
        long before = ASKED.get();
        TimeUnit.MILLISECONDS.sleep(300);
        return ASKED.get() - before;
    }

    private static void awaitSilence() throws InterruptedException {
        for (int tries = 0; asked() > 0; tries++) {
            assertTrue(tries < 60, "the net is still asked");
        }
    }

    /** Each would go on for minutes: looking ahead, a rollout, and a review. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "/board/stream?roll=3-1&ahead=4&next=1",
                "/board/rollout/stream?roll=3-1&out=8/5+6/5&out=24/20&games=12960",
                "/records/1/stream"
            })
    void itEndsWithThePage(String path) throws IOException, InterruptedException {
        awaitSilence();
        HttpClient client = HttpClient.newHttpClient();
        String cookie = client.send(
                        HttpRequest.newBuilder(URI.create(server.address())).build(),
                        HttpResponse.BodyHandlers.discarding())
                .headers()
                .firstValue("Set-Cookie")
                .orElseThrow()
                .replaceFirst(";.*", "");
        try (InputStream stream = client.send(
                        HttpRequest.newBuilder(URI.create(base + path))
                                .header("Cookie", cookie)
                                .header("Accept", "text/event-stream")
                                .build(),
                        HttpResponse.BodyHandlers.ofInputStream())
                .body()) {
            for (int tries = 0; asked() == 0; tries++) {
                assertTrue(tries < 60, "nobody asks the net");
            }
            assertTrue(asked() > 0, "it goes on while the page listens");
            String heard = new String(stream.readNBytes(stream.available()));
            assertFalse(heard.contains("event: end"), heard);
        }
        awaitSilence();
    }

    private static Page open(BrowserContext context, boolean hidden, String path) {
        Page page = context.newPage();
        page.addInitScript(COUNTING);
        page.addInitScript(HIDING.formatted(hidden));
        page.navigate(base + path);
        return page;
    }

    private static void listensTo(Page page, int streams) {
        page.waitForFunction("streams => listening.size === streams", streams);
    }

    /** One, whatever is asked one after the other; none while nobody looks, and again when somebody does. */
    @Test
    void aPageHasOneStream() {
        try (BrowserContext context = browser.chromium().newContext()) {
            context.newPage().navigate(server.address());
            Page page = open(context, false, "/board?roll=3-1&ahead=4");
            listensTo(page, 1);
            page.locator(".plays a").nth(1).click();
            page.waitForSelector(".play-shown");
            listensTo(page, 1);
            page.getByText("Roll out").click();
            page.waitForSelector("[data-stop]");
            listensTo(page, 1);
            assertTrue(page.evaluate("() => [...listening][0].url").toString().contains("/board/rollout/stream"));
            page.evaluate("() => hide(true)");
            listensTo(page, 0);
            page.evaluate("() => hide(false)");
            listensTo(page, 1);
            page.click("[data-stop]");
            listensTo(page, 0);
            assertEquals(1, page.evaluate("() => most"), "never two at a time");
            page.navigate(base + "/board?roll=3-1&ahead=0");
            page.waitForSelector("#answer .plays");
            assertEquals(0, page.evaluate("() => most"), "nothing is worked on, and nothing is listened to");
        }
    }

    /** Browsers allow six connections: pages in the background leave them to the one that is looked at. */
    @Test
    void hiddenPagesKeepNoConnection() {
        try (BrowserContext context = browser.chromium().newContext()) {
            context.newPage().navigate(server.address());
            for (int hidden = 0; hidden < CONNECTIONS; hidden++) {
                Page page = open(context, true, "/records/1");
                page.waitForSelector(".turns");
                assertEquals(0, page.evaluate("() => most"));
            }
            Page page = open(context, false, "/records/1?at=g1t2");
            listensTo(page, 1);
            page.keyboard().press("ArrowLeft");
            page.waitForFunction("() => location.search === '?at=g1t1'");
        }
    }
}
