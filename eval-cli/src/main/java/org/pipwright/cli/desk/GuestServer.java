package org.pipwright.cli.desk;

import io.javalin.Javalin;
import io.javalin.util.JavalinBindException;
import java.net.InetSocketAddress;
import java.util.Map;
import java.util.Set;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.pipwright.cli.console.UserError;

/**
 * A second server, on an address that others in the network reach: for devices of the class. It has no route but those of
 * {@link GuestRoutes} and threads of its own, so that nobody reaches the desk through it or keeps the desk waiting.
 */
final class GuestServer implements AutoCloseable {
    private static final int THREADS = 24;

    private final Guests guests = new Guests(System::nanoTime);
    private final Classroom classroom = new Classroom();
    private final String host;
    private final Javalin server;

    /**
     * Starts it.
     *
     * @param address where it listens, port 0 for any that is free
     * @throws UserError if the port is taken
     */
    GuestServer(InetSocketAddress address) {
        host = address.getAddress().getHostAddress();
        server = Door.server(
                new Origins(() -> Set.of(place())),
                routes -> new GuestRoutes(guests, classroom, this::port).add(routes),
                config -> config.jetty.threadPool = new QueuedThreadPool(THREADS));
        try {
            server.start(host, address.getPort());
        } catch (JavalinBindException e) {
            throw new UserError("port " + address.getPort() + " of " + host
                    + " is taken: choose another one with --listen, or leave it out");
        }
    }

    private int port() {
        return server.port();
    }

    private String place() {
        return host + ":" + port();
    }

    /** What is shown and guessed. */
    Classroom classroom() {
        return classroom;
    }

    /** Another code for everybody. */
    void renew() {
        guests.renew();
        classroom.forget();
    }

    /** How devices come in, and how many have. */
    Tablets tablets() {
        Map<String, Integer> guesses = classroom.guesses();
        int guessed = guesses.values().stream().mapToInt(Integer::intValue).sum();
        return new Tablets("http://" + place() + "/", guests.code(), guests.present(), guessed);
    }

    @Override
    public void close() {
        server.stop();
    }
}
