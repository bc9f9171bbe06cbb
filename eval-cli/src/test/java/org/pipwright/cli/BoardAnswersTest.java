package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.cli.desk.DeskServer;
import org.pipwright.cli.desk.DeskSetup;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.bearoff.TableListener;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.NetworkEvaluator;

/** The desk's answers are those of the commands, and are worked on only as long as somebody waits for them. */
class BoardAnswersTest {
    private static final Pattern ROW = Pattern.compile("<tr.*?</tr>", Pattern.DOTALL);

    @TempDir
    static Path folder;

    private static final HttpClient CLIENT = HttpClient.newHttpClient();
    private static DeskServer server;

    @BeforeAll
    static void start() {
        EndgameTables tables = EndgameTables.standard(TableFolder.ofUser(System.getenv()), 1, TableListener.SILENT);
        Knowledge knowledge = Knowledge.of(TestNet.MODEL).with(tables);
        server = new DeskServer(new DeskSetup(0, List.of("tiny"), name -> knowledge, folder, 2)).awaitNet();
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    private static HttpRequest.Builder to(DeskServer desk, String path) throws IOException, InterruptedException {
        String cookie = CLIENT.send(
                        HttpRequest.newBuilder(URI.create(desk.address())).build(),
                        HttpResponse.BodyHandlers.discarding())
                .headers()
                .firstValue("Set-Cookie")
                .orElseThrow();
        String base = desk.address().substring(0, desk.address().indexOf("/?"));
        return HttpRequest.newBuilder(URI.create(base + path))
                .header("Cookie", cookie.substring(0, cookie.indexOf(';')));
    }

    /** The page, or the last part of it that a stream brings before it ends. */
    private static String answer(String path) throws IOException, InterruptedException {
        HttpRequest.Builder request = to(server, path);
        if (path.contains("/stream")) {
            request.header("Accept", "text/event-stream");
        }
        String all = CLIENT.send(request.build(), HttpResponse.BodyHandlers.ofString())
                .body();
        return path.contains("/stream") ? all.substring(all.lastIndexOf("event: answer")) : all;
    }

    /** Cells of the rows of a page's tables. */
    private static List<List<String>> rows(String html) {
        List<List<String>> rows = new ArrayList<>();
        Matcher row = ROW.matcher(html.replaceAll("(?m)^data: ?", ""));
        while (row.find()) {
            List<String> cells = new ArrayList<>();
            for (String cell : row.group().split("</t[hd]>")) {
                cells.add(cell.replaceAll("<[^>]*>", "").strip());
            }
            rows.add(cells.subList(0, cells.size() - 1));
        }
        return rows;
    }

    private static String command(String... args) {
        Run run = Run.of(args);
        assertEquals(0, run.code(), run.err());
        return run.out();
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "start | 3-1 | for=points | ",
                "start | 6-4 | for=money | --cube 1",
                "2@6 1@bar / 3@4 2@20 | 6-2 | for=match&away=2,5&cube=2&owner=them | --away 2,5 --cube 2 --owner them"
            })
    void playsAreThoseOfRank(String position, String roll, String stakes, String options)
            throws IOException, InterruptedException {
        String query = "position=" + encoded(position) + "&roll=" + roll + "&" + stakes;
        for (int ahead = 0; ahead <= 1; ahead++) {
            List<List<String>> rows =
                    rows(answer(ahead == 0 ? "/board?" + query : "/board/stream?next=1&ahead=" + ahead + "&" + query));
            List<String> line = new ArrayList<>(
                    List.of("rank", position, "--roll", roll, "--net", TestNet.path(), "--lookahead", "" + ahead));
            if (options != null) {
                line.addAll(List.of(options.split(" ")));
            }
            String ranked = command(line.toArray(String[]::new));
            int found = 0;
            for (List<String> row : rows) {
                if (row.size() == 9 && row.get(2).matches("[+-]?[0-9.]+")) {
                    String same = "(?m)^ *[0-9]+ +" + Pattern.quote(row.get(1)) + " +" + Pattern.quote(row.get(2))
                            + " +" + Pattern.quote(row.get(3)) + " +" + row.get(4) + " ";
                    assertTrue(Pattern.compile(same).matcher(ranked).find(), row + " is not in\n" + ranked);
                    found++;
                }
            }
            assertTrue(found >= 2, "rows on the page: " + rows);
        }
    }

    @Test
    void chancesAndCubeAreThoseOfOddsAndCube() throws IOException, InterruptedException {
        String odds = command("odds", "start", "--net", TestNet.path());
        List<List<String>> points = rows(answer("/board?for=points"));
        for (String side : List.of("win", "lose")) {
            List<String> row = points.stream()
                    .filter(each -> each.get(0).equals(side))
                    .findFirst()
                    .orElseThrow();
            assertTrue(
                    Pattern.compile(side + ", % +" + String.join(" +", row.subList(1, 5)))
                            .matcher(odds)
                            .find(),
                    row + " is not in\n" + odds);
        }
        String cube = command(
                "cube",
                "start",
                "--net",
                TestNet.path(),
                "--no-jacoby",
                "--beavers",
                "--cube",
                "2",
                "--owner",
                "me",
                "--lookahead",
                "0");
        List<List<String>> money = rows(answer("/board?no-jacoby=yes&beavers=yes&cube=2&owner=me"));
        for (String action : List.of("roll", "double, take", "double, pass", "double, beaver", "double, best answer")) {
            List<String> row = money.stream()
                    .filter(each -> each.get(0).equals(action))
                    .findFirst()
                    .orElseThrow();
            String same = "(?m)^" + action + " +" + Pattern.quote(row.get(1)) + " +[a-z]+ +" + Pattern.quote(row.get(2))
                    + "$";
            assertTrue(Pattern.compile(same).matcher(cube).find(), row + " is not in\n" + cube);
        }
    }

    /** Deeper answers bring their own sentences: another play may be the best by then. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1})
    void explanationsAreThoseOfRank(int ahead) throws IOException, InterruptedException {
        String ranked = command(
                "rank",
                "start",
                "--roll",
                "3-1",
                "--net",
                TestNet.path(),
                "--top",
                "2",
                "--explain",
                "--cube",
                "1",
                "--lookahead",
                "" + ahead);
        String second = ranked.lines()
                .filter(line -> line.matches(" *2 .*"))
                .findFirst()
                .orElseThrow();
        String play = second.strip().split(" {2,}")[1];
        String query = "roll=3-1&ahead=" + ahead + "&play=" + encoded(play);
        String page = ahead == 0 ? answer("/board?" + query) : answer("/board/stream?next=1&" + query);
        List<String> why = new ArrayList<>();
        Matcher item = Pattern.compile("(?s)<ul class=\"why\">(.*?)</ul>").matcher(page);
        assertTrue(item.find(), page);
        for (String sentence : item.group(1).split("</li>")) {
            String plain = sentence.replaceAll("(?m)^data: ?", "")
                    .replaceAll("<[^>]*>", "")
                    .strip();
            if (!plain.isEmpty()) {
                why.add(plain);
            }
        }
        assertTrue(why.size() >= 2, why.toString());
        why.forEach(sentence -> assertTrue(ranked.contains(sentence), sentence + " is not in\n" + ranked));
    }

    @Test
    void picturesAreThoseOfDraw() throws IOException, InterruptedException {
        String position = "2@6 1@bar / 3@4 2@20";
        String query = "position=" + encoded(position) + "&roll=6-2&play=bar/17&for=match&away=2,5&cube=2&owner=me";
        String drawn = command(
                "draw", position, "--roll", "6-2", "--play", "bar/17", "--away", "2,5", "--cube", "2", "--owner", "me",
                "--svg", "-");
        assertEquals(drawn, answer("/board/picture.svg?" + query));
        HttpResponse<InputStream> png = CLIENT.send(
                to(server, "/board/picture.png?" + query).build(), HttpResponse.BodyHandlers.ofInputStream());
        assertEquals(
                "attachment; filename=\"position.png\"",
                png.headers().firstValue("Content-Disposition").orElseThrow());
        assertEquals(1600, ImageIO.read(png.body()).getWidth());
        String hidden = answer("/board/picture.svg?pips=hidden&home=left");
        assertTrue(hidden.startsWith("<svg") && !hidden.contains("167"), "pips are to be counted");
    }

    /** What cannot be asked is told where the answer would stand. */
    @Test
    void thereIsNotAlwaysAnAnswer() throws IOException, InterruptedException {
        assertTrue(answer("/board?position=off+/+off").contains("put some of each side there"));
        assertTrue(answer("/board?position=1@6+/+off").contains("The opponent has borne off every checker"));
        assertTrue(answer("/board?for=match&away=900,900").contains("match table"));
    }

    /** Looking four rolls ahead would take hours; it ends with the page that has asked, as a rollout does. */
    @Test
    @Timeout(120)
    void workEndsWithItsPage() throws IOException, InterruptedException {
        AtomicLong evaluated = new AtomicLong();
        Knowledge counting = Knowledge.of(() -> {
            PositionEvaluator plain = new NetworkEvaluator(TestNet.MODEL);
            return (planes, at, out, outAt) -> {
                evaluated.incrementAndGet();
                plain.evaluate(planes, at, out, outAt);
            };
        });
        try (DeskServer slow =
                new DeskServer(new DeskSetup(0, List.of("tiny"), name -> counting, folder, 2)).awaitNet()) {
            for (String path : List.of(
                    "/board/stream?next=4&ahead=4",
                    "/board/rollout/stream?roll=3-1&games=12960&out=8/5+6/5&out=24/20")) {
                HttpRequest request =
                        to(slow, path).header("Accept", "text/event-stream").build();
                InputStream events = CLIENT.send(request, HttpResponse.BodyHandlers.ofInputStream())
                        .body();
                long before = evaluated.get();
                while (evaluated.get() < before + 2000) {
                    Thread.sleep(20);
                }
                events.close();
                long last;
                do {
                    last = evaluated.get();
                    Thread.sleep(500);
                } while (evaluated.get() != last);
            }
        }
    }
}
