package org.pipwright.bench.kills;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.pipwright.engine.record.Game;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RecordText;

/** Whoever sits at a desk: lays a table for two nets or goes on at the one that is kept, and has the match played to its end. */
final class DeskVisitor implements Runnable {
    /** The net of both seats. */
    static final String NET = "swift";

    private static final int LENGTH = 3;
    private static final String TABLE = "who0=" + NET + "&who1=" + NET
            + "&name0=Ada&name1=Ben&lookahead0=0&lookahead1=0" + "&seed=7&length=" + LENGTH;

    private static final Pattern ADDRESS = Pattern.compile("(http://[\\w.:]+)(/\\?key=\\S+)");
    private static final long PAUSE_MILLIS = 10;
    private static final Duration PATIENCE = Duration.ofMinutes(2);

    private final Work desk;
    private final Path folder;
    private final boolean again;
    private final HttpClient client = HttpClient.newHttpClient();
    private String base;
    private String cookie;
    private volatile boolean over;
    private volatile String failure = "";

    DeskVisitor(Work desk, Path folder, boolean again) {
        this.desk = desk;
        this.folder = folder;
        this.again = again;
    }

    /** Whether the match is over. */
    boolean over() {
        return over;
    }

    /** Why it went before the match was over; empty if it did not. */
    String failure() {
        return failure;
    }

    @Override
    public void run() {
        try {
            comeIn();
            if (!isKeptToTheEnd()) {
                play(table());
            }
            over = true;
            desk.send("TERM");
        } catch (IOException e) {
            // The desk has gone, as it was meant to; or it refuses, and then the match is not over.
            if (desk.isAlive()) {
                failure = "visitor: " + e;
                desk.end();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void comeIn() throws IOException, InterruptedException {
        Matcher address = ADDRESS.matcher(desk.out());
        while (!address.find()) {
            if (!desk.isAlive()) {
                throw new IOException("no desk");
            }
            Thread.sleep(PAUSE_MILLIS);
            address = ADDRESS.matcher(desk.out());
        }
        base = address.group(1);
        HttpResponse<String> answer = send(HttpRequest.newBuilder(URI.create(address.group())));
        String set = answer.headers().firstValue("Set-Cookie").orElseThrow(() -> new IOException("no cookie"));
        cookie = set.substring(0, set.indexOf(';'));
    }

    /** Whether the match was over before the desk was: it is then no longer offered. */
    private boolean isKeptToTheEnd() throws IOException {
        Optional<Path> record = again ? DeskGame.record(folder) : Optional.empty();
        return record.isPresent() && isOver(RecordText.parse(Files.readString(record.get())));
    }

    private static boolean isOver(GameRecord record) {
        return Math.max(record.points(0), record.points(1)) >= LENGTH;
    }

    private String table() throws IOException, InterruptedException {
        Optional<Path> record = again ? DeskGame.record(folder) : Optional.empty();
        HttpResponse<String> answer = record.isEmpty()
                ? post("/tables", TABLE)
                : post(
                        "/tables/kept",
                        "record=" + record.get().getFileName().toString().replace(".txt", ""));
        return answer.headers()
                .firstValue("Location")
                .orElseThrow(() -> new IOException("no table: " + answer.statusCode()));
    }

    /** A turn that could not be kept is tried again, for a while. */
    private void play(String table) throws IOException, InterruptedException {
        String before = "";
        long changed = System.nanoTime();
        while (true) {
            GameRecord record = RecordText.parse(get(table + "/record.txt").body());
            if (isOver(record)) {
                return;
            }
            String now = record.toString();
            if (now.equals(before)) {
                if (System.nanoTime() - changed > PATIENCE.toNanos()) {
                    throw new IOException("nothing moves");
                }
                Thread.sleep(PAUSE_MILLIS);
            } else {
                changed = System.nanoTime();
            }
            before = now;
            Game game = record.games().get(record.games().size() - 1);
            post(table + (game.points() == 0 ? "/step" : "/game"), "");
        }
    }

    private HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return send(HttpRequest.newBuilder(URI.create(base + path)).header("Cookie", cookie));
    }

    private HttpResponse<String> post(String path, String form) throws IOException, InterruptedException {
        return send(HttpRequest.newBuilder(URI.create(base + path))
                .header("Cookie", cookie)
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(form)));
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return client.send(request.timeout(PATIENCE).build(), HttpResponse.BodyHandlers.ofString());
    }
}
