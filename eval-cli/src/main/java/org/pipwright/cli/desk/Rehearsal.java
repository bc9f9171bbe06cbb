package org.pipwright.cli.desk;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.HttpURLConnection;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Shows a desk's pages to nobody. The launcher has Java note which classes that takes, so that later starts are quick. */
public final class Rehearsal {
    private static final List<String> PATHS = List.of(
            "/",
            "/board?ahead=0",
            "/board?roll=3-1&ahead=0",
            "/class?roll=3-1&ahead=0",
            "/practice",
            "/assets/desk.css",
            "/assets/htmx.js");

    private Rehearsal() {}

    /**
     * Asks for each kind of page once.
     *
     * @param address of a desk, with its key
     */
    public static void show(String address) {
        try {
            URI desk = URI.create(address);
            HttpURLConnection door = open(desk);
            if (door.getResponseCode() != HttpURLConnection.HTTP_SEE_OTHER) {
                throw new IOException("it says " + door.getResponseCode());
            }
            String cookie = door.getHeaderField("Set-Cookie").replaceFirst(";.*", "");
            for (String path : PATHS) {
                read(open(desk.resolve(path)), cookie);
            }
            String table = send(desk.resolve("/tables"), cookie, "length=1&seed=1");
            send(desk.resolve(table + "/throw"), cookie, "");
            read(open(desk.resolve(table)), cookie);
        } catch (IOException e) {
            throw new UncheckedIOException("the desk does not answer at " + address, e);
        }
    }

    private static void read(HttpURLConnection page, String cookie) throws IOException {
        page.setRequestProperty("Cookie", cookie);
        try (InputStream in = page.getInputStream()) {
            in.readAllBytes();
        }
    }

    /** Sends a form; the place to go on from. */
    private static String send(URI address, String cookie, String form) throws IOException {
        HttpURLConnection sent = open(address);
        sent.setDoOutput(true);
        sent.setRequestProperty("Cookie", cookie);
        sent.getOutputStream().write(form.getBytes(StandardCharsets.US_ASCII));
        if (sent.getResponseCode() != HttpURLConnection.HTTP_SEE_OTHER) {
            throw new IOException("it says " + sent.getResponseCode());
        }
        return sent.getHeaderField("Location");
    }

    private static HttpURLConnection open(URI address) throws IOException {
        HttpURLConnection connection = (HttpURLConnection) address.toURL().openConnection();
        connection.setInstanceFollowRedirects(false);
        return connection;
    }
}
