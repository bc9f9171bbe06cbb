package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.cli.desk.DeskServer;
import org.pipwright.cli.desk.DeskSetup;
import org.pipwright.cli.desk.Rehearsal;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.InvalidModelException;
import org.pipwright.engine.record.RecordText;
import org.pipwright.models.ModelCatalog;

/** The desk, asked by a real client and used in a real browser. */
class DeskServerTest {
    @TempDir
    static Path folder;

    private static DeskServer server;
    private static String base;

    private static final String FORM = "POST /tables\nContent-Type: application/x-www-form-urlencoded\nCookie: ";

    private final HttpClient client = HttpClient.newHttpClient();

    @BeforeAll
    static void start() {
        server = new DeskServer(new DeskSetup(0, List.of("tiny"), name -> Knowledge.of(TestNet.MODEL), folder, 1))
                .awaitNet();
        base = server.address().substring(0, server.address().indexOf("/?"));
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    private String cookie() throws IOException, InterruptedException {
        HttpResponse<String> answer = client.send(
                HttpRequest.newBuilder(URI.create(server.address())).build(), HttpResponse.BodyHandlers.ofString());
        assertEquals(303, answer.statusCode());
        assertEquals("/", answer.headers().firstValue("Location").orElseThrow());
        String set = answer.headers().firstValue("Set-Cookie").orElseThrow();
        assertTrue(set.contains("HttpOnly") && set.contains("SameSite=Strict"), set);
        return set.substring(0, set.indexOf(';'));
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }

    private static HttpRequest.Builder to(String path) {
        return HttpRequest.newBuilder(URI.create(base + path));
    }

    private static HttpRequest.Builder post(String path, String form) {
        return to(path).header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(form));
    }

    @Test
    void nobodyGetsInWithoutTheKey() throws IOException, InterruptedException {
        for (String path : List.of("/", "/?key=x", "/tables/1", "/assets/desk.css", "/nothing")) {
            HttpResponse<String> answer = send(to(path));
            assertEquals(401, answer.statusCode(), path);
            assertFalse(answer.body().contains("<"), answer.body());
        }
        assertEquals(401, send(post("/tables", "length=3")).statusCode());
    }

    @Test
    void otherSitesAreRefusedWithTheKeyToo() throws IOException, InterruptedException {
        String cookie = cookie();
        assertEquals(200, send(to("/").header("Cookie", cookie)).statusCode());
        HttpRequest.Builder foreign = post("/tables", "length=3&lookahead0=0&lookahead1=0");
        assertEquals(
                403,
                send(foreign.header("Cookie", cookie).header("Origin", "http://evil.example"))
                        .statusCode());
        URI desk = URI.create(base);
        String request = "GET /\nHost: evil.example:" + desk.getPort() + "\nCookie: " + cookie;
        assertEquals(403, RawRequest.status(desk, request, ""));
    }

    @Test
    void pagesMayRunNoScriptButTheDesks() throws IOException, InterruptedException {
        HttpResponse<String> answer = send(to("/").header("Cookie", cookie()));
        String policy = answer.headers().firstValue("Content-Security-Policy").orElseThrow();
        assertTrue(policy.startsWith("default-src 'none'; script-src 'self'; style-src 'self';"), policy);
        assertFalse(policy.contains("unsafe"), policy);
        assertFalse(answer.body().contains("style="), "no style in attributes either");
    }

    @Test
    void sizesAndNumbersAreLimited() throws IOException, InterruptedException {
        String cookie = cookie();
        String large = FORM + cookie + "\nContent-Length: 100000";
        assertEquals(413, RawRequest.status(URI.create(base), large, ""));
        for (String form : List.of(
                "length=99&lookahead1=0",
                "length=3&who1=tiny&lookahead1=9",
                "length=3&who1=../../etc/passwd",
                "length=x",
                "name0=a:b&length=3",
                "name0=A&name1=A&length=3",
                "")) {
            HttpResponse<String> answer = send(post("/tables", form).header("Cookie", cookie));
            assertEquals(422, answer.statusCode(), form);
            assertTrue(answer.body().contains("class=\"error\""), form);
        }
        for (String path : List.of("/tables/999", "/tables/x", "/assets/x.css")) {
            assertEquals(404, send(to(path).header("Cookie", cookie)).statusCode(), path);
        }
        assertEquals(
                400,
                send(to("/assets/../../etc/passwd").header("Cookie", cookie)).statusCode(),
                "paths that climb are no paths");
    }

    /** Whoever mistyped a field of the form finds the others as they were. */
    @Test
    void aRefusedFormKeepsWhatWasTyped() throws IOException, InterruptedException {
        String cookie = cookie();
        String page = send(post("/tables", "name0=Ada+%3Cb%3E&who0=tiny&lookahead0=2&who1=&length=99&beavers=on&seed=7")
                        .header("Cookie", cookie))
                .body();
        assertTrue(page.contains("value=\"Ada &lt;b>\"") || page.contains("value=\"Ada &lt;b&gt;\""), page);
        assertTrue(page.contains("<option value=\"tiny\" selected>"), page);
        assertTrue(page.contains("<option selected>2</option>"), page);
        assertTrue(page.contains("value=\"99\""), page);
        assertTrue(page.contains("name=\"beavers\" checked>"), page);
        assertTrue(page.contains("name=\"jacoby\">"), page);
        assertTrue(page.contains("value=\"7\""), page);
        String fresh = send(to("/").header("Cookie", cookie)).body();
        assertTrue(fresh.contains("name=\"jacoby\" checked>") && fresh.contains("value=\"3\""), fresh);
        String other = send(post("/tables/kept", "record=none").header("Cookie", cookie))
                .body();
        assertTrue(other.contains("class=\"error\""), other);
        assertTrue(other.contains("name=\"jacoby\" checked>") && other.contains("value=\"3\""), other);
    }

    /** A score that the match table does not hold has no answer, and the page says so. */
    @Test
    void aClassIsToldWhyThereIsNoAnswer() throws IOException, InterruptedException {
        HttpResponse<String> answer =
                send(to("/class?for=match&away=99,99&answer=shown&ahead=0").header("Cookie", cookie()));
        assertEquals(422, answer.statusCode());
        assertTrue(answer.body().contains("There is no answer: "), answer.body());
        assertTrue(answer.body().contains("Uncover the answer"));
    }

    /** A request in pieces says nothing of its size before it ends, which may be never: it is not read. */
    @Test
    void requestsInPiecesAreRefused() throws IOException, InterruptedException {
        String head = FORM + cookie() + "\nTransfer-Encoding: chunked";
        assertEquals(411, RawRequest.status(URI.create(base), head, "8\r\nlength=3\r\n"), "one that goes on");
        assertEquals(411, RawRequest.status(URI.create(base), head, "8\r\nlength=3\r\n0\r\n\r\n"));
    }

    /** Two people, without any script: forms are enough. */
    @Test
    void formsAloneAreEnough() throws IOException, InterruptedException {
        String cookie = cookie();
        HttpResponse<String> laid = send(
                post("/tables", "name0=Ada+%3Cb%3E&name1=Ben&length=3&seed=5").header("Cookie", cookie));
        assertEquals(303, laid.statusCode(), laid.body());
        String table = laid.headers().firstValue("Location").orElseThrow();
        assertEquals(
                303, send(post(table + "/throw", "").header("Cookie", cookie)).statusCode());
        HttpResponse<String> refused = send(post(table + "/play", "play=24/1").header("Cookie", cookie));
        assertEquals(200, refused.statusCode());
        assertTrue(refused.body().contains("class=\"error\"") && refused.body().contains("Ada &lt;b&gt;"));
        String play = refused.body().replaceAll("(?s).*?<option value=\"([^\"]*)\".*", "$1");
        assertEquals(
                303,
                send(post(table + "/play", "play=" + play.replace(" ", "+")).header("Cookie", cookie))
                        .statusCode());
        String record = send(to(table + "/record.txt").header("Cookie", cookie)).body();
        assertEquals(1, RecordText.parse(record).games().get(0).entries().size());
        try (var files = Files.list(folder)) {
            assertTrue(
                    files.anyMatch(file ->
                            file.toString().endsWith(".txt") && reads(file).equals(record)),
                    "the same is on disk");
        }
    }

    /** A desk that the launcher starts only to see which classes it needs; nothing but what ends by itself would do. */
    @Test
    void aRehearsalShowsEachPageAndEnds() {
        Rehearsal.show(server.address());
        assertThrows(RuntimeException.class, () -> Rehearsal.show(base + "/?key=wrong"));
    }

    @Test
    void aNetThatCannotBeLoadedIsToldBeforeAnAddressIs() {
        DeskSetup none = new DeskSetup(
                0, List.of("none"), name -> Knowledge.of(ModelCatalog.shipped().load(name)), folder, 1);
        assertThrows(InvalidModelException.class, () -> new DeskServer(none).awaitNet());
    }

    private static String reads(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            return "";
        }
    }

    /** A person against the net, in a browser: by the keyboard, on a phone's screen, with nothing to complain about. */
    @Test
    void aGameInABrowser() {
        try (Browser browser = Browser.start();
                BrowserContext context = browser.chromium()
                        .newContext(
                                new com.microsoft.playwright.Browser.NewContextOptions().setViewportSize(390, 800))) {
            Page page = context.newPage();
            List<String> complaints = new ArrayList<>();
            page.onConsoleMessage(message -> complaints.add(message.text()));
            page.onPageError(complaints::add);
            page.navigate(server.address());
            assertFalse(page.url().contains("key"), page.url());
            Browser.requireAccessible(page);
            page.locator("[name=name0]").fill("Ada");
            page.locator("[name=seed]").fill("3");
            page.getByText("Sit down").click();
            page.waitForSelector("#table");
            // The net moves by itself until Ada has to throw.
            page.waitForSelector("[data-key=r], [data-key=t]");
            Browser.requireAccessible(page);
            while (page.locator("[data-key=t]").count() > 0) {
                page.keyboard().press("t");
                page.waitForSelector("[data-key=r]");
            }
            page.keyboard().press("r");
            page.waitForSelector("#play");
            assertTrue(page.locator("#said").textContent().contains("Ada to play"), "told to screen readers");
            page.locator("#play").fill("1/24");
            page.keyboard().press("Enter");
            page.waitForSelector(".error");
            page.getByText("Ask").click();
            page.waitForSelector("#opinion td");
            Browser.requireAccessible(page);
            String best = page.locator("#opinion tbody th").first().textContent();
            page.locator("#play").fill(best);
            page.keyboard().press("Enter");
            page.waitForFunction(
                    "best => document.querySelector('#table ol').textContent.includes('Ada') && !document.querySelector('#play')",
                    best);
            page.waitForSelector("[data-key=r], [data-key=t]");
            String lines = page.locator("#table ol").textContent();
            assertTrue(lines.contains("Ada ") && lines.contains("tiny "), lines);
            page.keyboard().press("b");
            page.waitForFunction("before => document.querySelector('#table ol').textContent !== before", lines);
            Object wide = page.evaluate("() => document.documentElement.scrollWidth");
            assertTrue(((Number) wide).intValue() <= 390, "the page is " + wide + " wide");
            assertEquals(List.of(), complaints);
        }
    }
}
