package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.cli.desk.DeskServer;
import org.pipwright.engine.drill.Candidate;
import org.pipwright.engine.drill.Origin;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.record.RecordText;
import org.pipwright.engine.roll.Roll;

/**
 * Requests made up at random, to everything that a desk answers: each is answered or refused in time, and nothing fails.
 * {@code -Dpipwright.test.requests=20000} makes more of them.
 */
class DeskRequestsTest {
    private static final int REQUESTS = Integer.getInteger("pipwright.test.requests", 700);
    private static final int CLIENTS = 2;

    /** Longer than anything that is answered at once, on a busy machine too. */
    private static final Duration PATIENCE = Duration.ofSeconds(40);

    private static final List<Integer> ANSWERS = List.of(200, 204, 286, 303, 400, 404, 413, 414, 422, 431);

    private static final Map<String, List<String>> FIELDS = Map.ofEntries(
            Map.entry(
                    "position",
                    List.of("start", "6@6 / 6@6", "1@1 / off", "off / off", "16@6 / 1@1", "5@6 / 5@19", "x")),
            Map.entry("text", List.of("start", "2@1 1@bar / 3@1", "@@", "")),
            Map.entry("roll", List.of("3-1", "6-6", "7-7", "", "x")),
            Map.entry("play", List.of("8/5 6/5", "bar/1", "24/1", "(", "")),
            Map.entry("for", List.of("money", "match", "points", "love")),
            Map.entry("away", List.of("5,5", "1,1", "0,0", "25,25", "26,3", "99,99", "9999,9999", "x", ",")),
            Map.entry("crawford", List.of("yes")),
            Map.entry("no-jacoby", List.of("yes")),
            Map.entry("beavers", List.of("yes")),
            Map.entry("cube", List.of("1", "2", "3", "64", "1024", "4194304", "9999999", "-2", "x")),
            Map.entry("owner", List.of("me", "them", "centre", "x")),
            Map.entry("home", List.of("left", "x")),
            Map.entry("pips", List.of("hidden", "x")),
            Map.entry("pick", List.of("6", "bar", "their-bar", "99", "x")),
            Map.entry("from", List.of("6", "off", "bar", "24", "x")),
            Map.entry("to", List.of("5", "off", "bar", "1", "x")),
            Map.entry("place", List.of("6", "off", "bar", "0", "x")),
            Map.entry("mine", List.of("0", "15", "16", "99", "-1", "x")),
            Map.entry("theirs", List.of("0", "15", "16", "99", "-1", "x")),
            Map.entry("guess", List.of("8/5 6/5", "double, take", "", "x")),
            Map.entry("guesses", List.of("3: 8/5 6/5; 1: roll", "99: double, take", "100: x", ";;;", ":")),
            Map.entry("out", List.of("8/5 6/5", "24/20", "x")),
            Map.entry("games", List.of("0", "1", "36", "99999", "x")),
            Map.entry("next", List.of("0", "9", "x")),
            Map.entry("at", List.of("g1t1", "g1t3", "g9t9", "x")),
            Map.entry("way", List.of("back", "on", "x")),
            Map.entry("again", List.of("yes")),
            Map.entry("source", List.of("theme-none", "positions-1", "mistakes-1-0", "mistakes-9-9", "log", "x-")),
            Map.entry("answer", List.of("shown", "8/5 6/5", "take", "Double", "bar/off")),
            Map.entry("action", List.of("double", "take", "pass", "beaver", "roll", "x")),
            Map.entry("result", List.of("single", "gammon", "x")),
            Map.entry("record", List.of("2026-01-01-000000-1", "../../x", "x")),
            Map.entry("who0", List.of("", "tiny", "x")),
            Map.entry("who1", List.of("", "tiny", "x")),
            Map.entry("name0", List.of("Ada", "", "a:b", "Ada")),
            Map.entry("name1", List.of("Ben", "", "Ada")),
            Map.entry("lookahead0", List.of("0", "1", "9", "-1")),
            Map.entry("lookahead1", List.of("0", "1", "x")),
            Map.entry("length", List.of("0", "1", "3", "25", "26", "x")),
            Map.entry("jacoby", List.of("on")),
            Map.entry("seed", List.of("1", "", "999999999", "9999999999", "x")));

    /** What may mean something to somebody: notation, addresses, HTML, files, terminals, the wrong half of a character. */
    private static final String ODD = "0123456789/@-,;:*()#%<>&'\"\\.\t\0\n\r\u001b \u2066\u00e9\ud83c";

    private static final List<String> ASKED = List.of(
            "/",
            "/board",
            "/board/move",
            "/board/put",
            "/board/throw",
            "/board/stream",
            "/board/rollout",
            "/board/rollout/stream",
            "/board/picture.svg",
            "/board/picture.png",
            "/class",
            "/practice",
            "/practice/#",
            "/practice/#/ahead",
            "/records/#",
            "/records/table-#",
            "/records/#/mistake",
            "/records/#/stream",
            "/records/table-#/stream",
            "/tables/#",
            "/tables/#/opinion",
            "/tables/#/record.txt",
            "/tables/#/record.sgf");

    private static final List<String> SENT = List.of(
            "/tables",
            "/tables/kept",
            "/tables/#/throw",
            "/tables/#/play",
            "/tables/#/cube",
            "/tables/#/resign",
            "/tables/#/back",
            "/tables/#/game",
            "/tables/#/step",
            "/practice",
            "/practice/#/answer",
            "/practice/#/next",
            "/class/code");

    private static final Pattern FORM =
            Pattern.compile("<form method=\"post\" action=\"([^\"]*)\".*?</form>", Pattern.DOTALL);
    private static final Pattern CHOICE = Pattern.compile("<button[^>]* name=\"([^\"]*)\" value=\"([^\"]*)\"");
    private static final Pattern OPTION = Pattern.compile("<option value=\"([^\"]*)\">");

    @TempDir
    static Path folder;

    private final Queue<String> failures = new ConcurrentLinkedQueue<>();
    private final Map<String, Integer> seen = new ConcurrentHashMap<>();

    @Test
    void requestsMadeUpAtRandomAreAnswered() throws Exception {
        Thread.setDefaultUncaughtExceptionHandler((thread, failure) -> failures.add(thread + ": " + failure));
        Knowledge knowledge = Knowledge.of(TestNet.MODEL);
        Candidate asked =
                Candidate.asked(new Origin.Listed("mine.txt", 1), Question.of(Position.start(), Roll.of(4, 2)));
        try (DeskServer server = TestDesk.open(
                folder,
                name -> knowledge,
                Map.of("evening.txt", RecordText.parse(RecordPageTest.TEXT)),
                Map.of("mine.txt", List.of(asked)))) {
            List<Thread> clients = new ArrayList<>();
            for (int number = 1; number <= CLIENTS; number++) {
                long seed = number;
                clients.add(new Thread(() -> new Visitor(server.address(), seed).visit(REQUESTS / CLIENTS)));
            }
            clients.forEach(Thread::start);
            for (Thread client : clients) {
                client.join();
            }
        }
        assertEquals(List.of(), List.copyOf(failures));
        for (String kind :
                List.of("200 get", "200 post", "303 get", "303 post", "404 get", "422 get", "422 post", "events")) {
            assertTrue(seen.containsKey(kind), kind + " is not among " + seen);
        }
        assertTrue(seen.get("forms") > REQUESTS / 10, seen.toString());
    }

    /** Somebody who asks for whatever comes to mind, and now and then does what a page offers. */
    private final class Visitor {
        private final HttpClient client =
                HttpClient.newBuilder().connectTimeout(PATIENCE).build();
        private final String address;
        private final SplittableRandom random;
        private String cookie;
        private String page = "";

        Visitor(String address, long seed) {
            this.address = address;
            random = new SplittableRandom(seed);
        }

        void visit(int requests) {
            String last = address;
            try {
                HttpResponse<String> door = client.send(
                        HttpRequest.newBuilder(URI.create(address)).build(), HttpResponse.BodyHandlers.ofString());
                cookie = door.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(";.*", "");
                for (int i = 0; i < requests; i++) {
                    boolean offered = random.nextInt(5) < 3 && page.contains("<form method=\"post\"");
                    String[] request = offered ? offered() : madeUp();
                    last = String.join(" ", request);
                    send(request[0], request[1], request[2]);
                }
            } catch (Exception e) {
                failures.add(last + ": " + e);
            }
        }

        private <T> T any(List<T> all) {
            return all.get(random.nextInt(all.size()));
        }

        private String[] madeUp() {
            boolean get = random.nextInt(10) < 7;
            String path = any(get ? ASKED : SENT)
                    .replace("#", Integer.toString(random.nextInt(random.nextBoolean() ? 3 : 60)));
            StringBuilder fields = new StringBuilder(path.startsWith("/tables") ? "x=y" : "ahead=" + random.nextInt(2));
            for (String name : FIELDS.keySet().stream().sorted().toList()) {
                if (random.nextInt(6) == 0) {
                    field(fields, name, random.nextInt(12) == 0 ? rubbish() : any(FIELDS.get(name)));
                }
            }
            return get ? new String[] {"get", path + "?" + fields, ""} : new String[] {"post", path, fields.toString()};
        }

        private String rubbish() {
            int length = random.nextInt(40) == 0 ? 3_000 : random.nextInt(12);
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < length; i++) {
                text.append(
                        random.nextInt(3) == 0
                                ? ODD.charAt(random.nextInt(ODD.length()))
                                : (char) random.nextInt(32, 127));
            }
            return text.toString();
        }

        private static void field(StringBuilder fields, String name, String value) {
            fields.append('&').append(name).append('=').append(URLEncoder.encode(value, StandardCharsets.UTF_8));
        }

        /** One of the forms of the page. */
        private String[] offered() {
            List<String> forms = new ArrayList<>();
            Matcher form = FORM.matcher(page);
            while (form.find()) {
                forms.add(form.group());
            }
            String chosen = any(forms);
            StringBuilder fields =
                    new StringBuilder("length=" + random.nextInt(4) + "&name1=Ben&lookahead0=0&lookahead1=0");
            if (random.nextBoolean()) {
                field(fields, "who1", "tiny");
                field(fields, "jacoby", "on");
                field(fields, "beavers", "on");
            }
            choose(CHOICE.matcher(chosen), fields);
            List<String> options = new ArrayList<>();
            Matcher option = OPTION.matcher(chosen);
            while (option.find()) {
                options.add(option.group(1));
            }
            if (!options.isEmpty()) {
                field(fields, chosen.contains("name=\"answer\"") ? "answer" : "play", any(options));
            }
            seen.merge("forms", 1, Integer::sum);
            return new String[] {"post", chosen.replaceFirst("(?s)^.*?action=\"([^\"]*)\".*$", "$1"), fields.toString()
            };
        }

        private void choose(Matcher choice, StringBuilder fields) {
            List<String[]> choices = new ArrayList<>();
            while (choice.find()) {
                choices.add(new String[] {choice.group(1), choice.group(2)});
            }
            if (!choices.isEmpty()) {
                String[] chosen = any(choices);
                field(fields, chosen[0], chosen[1]);
            }
        }

        private void send(String method, String path, String form) throws IOException, InterruptedException {
            URI to = URI.create(address.substring(0, address.indexOf("/?")) + path);
            HttpRequest.Builder request =
                    HttpRequest.newBuilder(to).timeout(PATIENCE).header("Cookie", cookie);
            boolean events = path.contains("/stream");
            if (events) {
                request.header("Accept", "text/event-stream");
            } else if (random.nextBoolean()) {
                request.header("HX-Request", "true");
            }
            if (method.equals("post")) {
                request.header("Content-Type", "application/x-www-form-urlencoded");
                request.POST(HttpRequest.BodyPublishers.ofString(form));
            }
            HttpResponse<InputStream> answer = answer(request.build());
            String body;
            try (InputStream in = answer.body()) {
                body = events ? some(in) : new String(in.readAllBytes(), StandardCharsets.UTF_8);
            }
            String what = answer.statusCode() + " " + method + " " + path + " " + form;
            boolean plain =
                    ANSWERS.contains(answer.statusCode()) && !body.contains("Exception") && !body.contains("\tat ");
            if (!plain) {
                failures.add(what + ": " + body);
            }
            seen.merge(
                    events && answer.statusCode() == 200 ? "events" : answer.statusCode() + " " + method,
                    1,
                    Integer::sum);
            String place = answer.headers().firstValue("Location").orElse("");
            if (place.startsWith("/tables/") || place.startsWith("/practice/")) {
                send("get", place, "");
            } else if (body.contains("<form method=\"post\"")) {
                page = body;
            }
        }

        /** A connection may be closed while a request is on its way; what is not answered in time is no such case. */
        private HttpResponse<InputStream> answer(HttpRequest request) throws IOException, InterruptedException {
            try {
                return client.send(request, HttpResponse.BodyHandlers.ofInputStream());
            } catch (HttpTimeoutException e) {
                throw e;
            } catch (IOException e) {
                return client.send(request, HttpResponse.BodyHandlers.ofInputStream());
            }
        }

        /** What comes of events in a moment; then the page goes. */
        private static String some(InputStream in) throws IOException, InterruptedException {
            ByteArrayOutputStream all = new ByteArrayOutputStream();
            for (int wait = 0; wait < 8 && !all.toString(StandardCharsets.UTF_8).contains("event: end"); wait++) {
                TimeUnit.MILLISECONDS.sleep(10);
                all.write(in.readNBytes(in.available()));
            }
            return all.toString(StandardCharsets.UTF_8);
        }
    }
}
