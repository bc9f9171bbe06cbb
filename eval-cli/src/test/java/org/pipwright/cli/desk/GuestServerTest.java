package org.pipwright.cli.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.cli.RawRequest;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.RandomModel;

/** Devices of a class, as a real client: they look and guess, and reach nothing else. */
class GuestServerTest {
    private static final Pattern ROUTE = Pattern.compile("routes\\s*\\.(get|post)\\(\\s*\"([^\"]+)\"");
    private static final Set<String> GUESTS = Set.of("get /", "get /now", "post /code", "post /guess");

    @TempDir
    Path folder;

    private final HttpClient client = HttpClient.newHttpClient();
    private DeskServer desk;
    private String teacher;
    private String key;
    private String guests;

    @BeforeEach
    void start() throws IOException, InterruptedException {
        desk = new DeskServer(new DeskSetup(
                        0,
                        List.of("tiny"),
                        name -> Knowledge.of(RandomModel.of(5)),
                        folder,
                        1,
                        Map.of(),
                        Map.of(),
                        folder.resolve("practice.log"),
                        Optional.of(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0))))
                .awaitNet();
        teacher = desk.address().substring(0, desk.address().indexOf("/?"));
        key = cookie(send(HttpRequest.newBuilder(URI.create(desk.address()))));
        guests = desk.tablets().orElseThrow().address();
        guests = guests.substring(0, guests.length() - 1);
    }

    @AfterEach
    void stop() {
        desk.close();
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }

    private static String cookie(HttpResponse<String> answer) {
        assertEquals(303, answer.statusCode(), answer.body());
        String set = answer.headers().firstValue("Set-Cookie").orElseThrow();
        assertTrue(set.endsWith("; Path=/; HttpOnly; SameSite=Strict"), set);
        return set.substring(0, set.indexOf(';'));
    }

    private static HttpRequest.Builder get(String address, String cookie) {
        return HttpRequest.newBuilder(URI.create(address)).header("Cookie", cookie);
    }

    private static HttpRequest.Builder post(String address, String cookie, String form) {
        return get(address, cookie)
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(form));
    }

    private String enter() throws IOException, InterruptedException {
        return cookie(send(post(
                guests + "/code", "x=y", "code=" + desk.tablets().orElseThrow().code())));
    }

    private String shown(String query) throws IOException, InterruptedException {
        HttpResponse<String> answer = send(get(teacher + "/class?ahead=0&" + query, key));
        assertEquals(200, answer.statusCode(), answer.body());
        return answer.body();
    }

    private HttpResponse<String> guess(String guest, String what) throws IOException, InterruptedException {
        String page = send(get(guests + "/", guest)).body();
        Matcher version = Pattern.compile("seen=([0-9]+)").matcher(page);
        assertTrue(version.find(), page);
        return send(post(
                guests + "/guess",
                guest,
                "version=" + version.group(1) + "&guess=" + URLEncoder.encode(what, StandardCharsets.UTF_8)));
    }

    /** Every route that any class of the desk adds, but for style sheets and scripts, asked with a guest's key, the teacher's, and both. */
    @Test
    void nothingElseIsReached() throws IOException, InterruptedException {
        Set<String> routes = new TreeSet<>();
        try (Stream<Path> sources = Files.list(Path.of("src/main/java/org/pipwright/cli/desk"))) {
            for (Path source : sources.toList()) {
                Matcher route = ROUTE.matcher(Files.readString(source));
                while (route.find()) {
                    routes.add(route.group(1) + " " + route.group(2).replaceAll("\\{[a-z]+}", "1"));
                }
            }
        }
        assertTrue(routes.containsAll(GUESTS) && routes.size() > 25, routes.toString());
        String guest = enter();
        // Something is there to be reached.
        assertEquals(
                303,
                send(post(teacher + "/tables", key, "name0=A&name1=B&length=3")).statusCode());
        routes.removeAll(GUESTS);
        routes.removeIf(route -> route.startsWith("get /assets/"));
        for (String route : routes) {
            String path = route.substring(route.indexOf(' ') + 1);
            for (String cookie : List.of(guest, key, guest + "; " + key)) {
                assertEquals(404, send(get(guests + path, cookie)).statusCode(), route);
                assertEquals(404, send(post(guests + path, cookie, "a=b")).statusCode(), route);
            }
            assertEquals(401, send(get(teacher + path, guest)).statusCode(), route);
        }
        assertEquals(401, send(get(teacher + "/", guest)).statusCode());
        assertEquals(401, send(get(teacher + "/?key=" + guest, guest)).statusCode());
        String secret = key.substring(key.indexOf('=') + 1);
        for (String cookie : List.of(key, guest.replaceAll("=.*", "=" + secret))) {
            assertTrue(send(get(guests + "/?key=" + secret, cookie)).body().contains("name=\"code\""), cookie);
        }
    }

    @Test
    void nobodyComesInWithoutTheCode() throws IOException, InterruptedException {
        shown("roll=3-1");
        for (String path : List.of("/", "/now", "/now?seen=0")) {
            HttpResponse<String> answer = send(get(guests + path, "x=y"));
            assertFalse(answer.body().contains("<svg"), path);
            assertEquals(path.equals("/") ? 200 : 401, answer.statusCode(), path);
        }
        send(post(guests + "/guess", "x=y", "version=1&guess=8/5 6/5"));
        assertEquals(0, desk.tablets().orElseThrow().guessed());
        for (int i = 0; i < WrongCodes.MAX_OF_ONE; i++) {
            HttpResponse<String> wrong = send(post(guests + "/code", "x=y", "code=WRONG" + i));
            assertEquals(403, wrong.statusCode());
            assertTrue(wrong.headers().firstValue("Set-Cookie").isEmpty());
        }
        String right = "code=" + desk.tablets().orElseThrow().code();
        assertEquals(429, send(post(guests + "/code", "x=y", right)).statusCode());
    }

    @Test
    void otherSitesAreRefused() throws IOException, InterruptedException {
        String guest = enter();
        assertEquals(
                403,
                send(get(guests + "/", guest).header("Origin", "http://evil.example"))
                        .statusCode());
        assertEquals(
                403, send(get(guests + "/", guest).header("Origin", teacher)).statusCode());
        URI at = URI.create(guests);
        for (String host : List.of("evil.example", "evil.example:" + at.getPort(), "localhost:" + at.getPort())) {
            assertEquals(403, RawRequest.status(at, "GET /\nHost: " + host + "\nCookie: " + guest, ""));
        }
        HttpResponse<String> page = send(get(guests + "/", guest));
        String policy = page.headers().firstValue("Content-Security-Policy").orElseThrow();
        assertTrue(policy.startsWith("default-src 'none'") && !policy.contains("unsafe"), policy);
        String large = "POST /guess\nContent-Type: application/x-www-form-urlencoded\nCookie: " + guest
                + "\nContent-Length: 100000";
        assertEquals(413, RawRequest.status(at, large, ""));
    }

    /** Guesses are secret until the answer is uncovered, and each guest has one. */
    @Test
    void theClassGuesses() throws IOException, InterruptedException {
        String one = enter();
        String two = enter();
        assertTrue(send(get(guests + "/", one)).body().contains("Nothing is shown yet"));
        shown("roll=3-1");
        String page = send(get(guests + "/", one)).body();
        assertTrue(page.contains("You have rolled 3-1") && page.contains("<svg") && !page.contains("href=\"/board"));
        assertEquals(422, guess(one, "24/1").statusCode());
        assertEquals(422, guess(one, "").statusCode());
        assertEquals(303, guess(one, "24/20").statusCode());
        assertEquals(303, guess(one, "6/5 8/5").statusCode());
        assertEquals(303, guess(two, "24/20").statusCode());
        Tablets here = desk.tablets().orElseThrow();
        assertEquals("2 tablets are here, 2 have guessed.", here.standing());
        String covered = shown("roll=3-1");
        assertFalse(covered.contains("<th scope=\"row\">24/20"), "nobody sees what others guess");
        assertTrue(covered.contains(here.standing()), covered);
        assertEquals(204, send(get(teacher + "/class/tablets?seen=2-2", key)).statusCode(), "nothing new to tell");
        String uncovered = shown("roll=3-1&guesses=3: 8/5 6/5&answer=shown".replace(" ", "+"));
        assertTrue(
                uncovered.matches(
                        "(?s).*8/5 6/5</th>.*?<td>3</td><td>\\+ 1</td>.*24/20</th>.*?<td>0</td><td>\\+ 1</td>.*"),
                uncovered);
        String seen = send(get(guests + "/now?seen=1", two)).body();
        assertTrue(seen.contains("You guessed <strong>24/20</strong>: <span class="), seen);
        assertTrue(seen.contains("class=\"plays\"") && !seen.contains("href=\"/board"), seen);
        assertFalse(seen.contains("type=\"checkbox\""), "nothing to roll out");
        assertEquals(422, guess(one, "24/20").statusCode(), "it is too late");
        shown("roll=6-2");
        assertEquals(0, desk.tablets().orElseThrow().guessed(), "another question");
        shown("cube=2&owner=me");
        assertEquals(303, guess(one, "double, pass").statusCode());
        assertEquals(422, guess(one, "beaver").statusCode());
        assertEquals(303, send(post(teacher + "/class/code", key, "a=b")).statusCode());
        HttpResponse<String> out = send(get(guests + "/now?seen=1", one));
        assertEquals(401, out.statusCode());
        assertEquals("true", out.headers().firstValue("HX-Refresh").orElseThrow());
    }

    @Test
    void unlessItIsAskedForNoPortIsOpen() {
        try (DeskServer plain = new DeskServer(
                        new DeskSetup(0, List.of("tiny"), name -> Knowledge.of(RandomModel.of(5)), folder, 1))
                .awaitNet()) {
            assertEquals(Optional.empty(), plain.tablets());
        }
    }
}
