package org.pipwright.cli.desk;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.HttpURLConnection;
import java.net.URI;
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
                HttpURLConnection page = open(desk.resolve(path));
                page.setRequestProperty("Cookie", cookie);
                try (InputStream in = page.getInputStream()) {
                    in.readAllBytes();
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the desk does not answer at " + address, e);
        }
    }

    private static HttpURLConnection open(URI address) throws IOException {
        HttpURLConnection connection = (HttpURLConnection) address.toURL().openConnection();
        connection.setInstanceFollowRedirects(false);
        return connection;
    }
}
