package org.pipwright.cli.desk;

import io.javalin.Javalin;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import io.javalin.util.JavalinBindException;
import java.util.Optional;
import java.util.Set;
import org.pipwright.cli.console.UserError;

/**
 * The server of a desk. It listens on the loopback address alone, and answers whom {@link Guard} lets in. If devices of the
 * class are to look on, a {@link GuestServer} listens for them.
 */
public final class DeskServer implements AutoCloseable {
    private static final String HOST = "127.0.0.1";
    private final Javalin server;
    private final Judges judges;
    private final String net;
    private final Opinions opinions;
    private final KeptGames kept;
    private final Streams streams = new Streams();
    private final Guard guard = new Guard(this::port);
    private final Optional<GuestServer> guests;

    /**
     * Starts a desk without the net that answers: until {@link #awaitNet()} pages say that it thinks.
     *
     * @param setup what it needs
     * @throws UserError if a port is taken
     */
    public DeskServer(DeskSetup setup) {
        judges = new Judges(setup.knowledge(), setup.threads());
        net = setup.nets().get(0);
        Tables tables = new Tables();
        kept = new KeptGames(setup, judges);
        PlayRoutes play = new PlayRoutes(setup, tables, kept, judges, this::tablets);
        opinions = new Opinions(judges, net);
        BoardRoutes board = new BoardRoutes(opinions, new BoardRollout(judges, net, setup.threads()), streams);
        Records records = new Records(setup.opened(), tables, record -> judges.review(record, net));
        PracticeLog log = new PracticeLog(setup.log());
        PracticeRoutes practice = new PracticeRoutes(
                new PracticeSources(records, setup.positions(), log), chosen -> judges.practice(chosen, net, log));
        guests = setup.guests().map(GuestServer::new);
        server = Door.server(
                new Origins(this::hosts),
                routes -> {
                    routes.before(this::admit);
                    play.add(routes);
                    board.add(routes);
                    new PictureRoutes().add(routes);
                    new ClassRoutes(opinions, guests).add(routes);
                    new RecordRoutes(records, opinions, streams).add(routes);
                    practice.add(routes);
                },
                config -> {});
        try {
            server.start(HOST, setup.port());
        } catch (JavalinBindException e) {
            guests.ifPresent(GuestServer::close);
            throw new UserError("port " + setup.port() + " is taken: choose another one with --port, or leave it out");
        }
    }

    /**
     * Loads the net that answers, if it has not been, and makes it quick.
     *
     * @return this desk
     * @throws RuntimeException as the net's knowledge fails; the desk is closed then
     */
    public DeskServer awaitNet() {
        try {
            judges.knowledge(net);
        } catch (RuntimeException e) {
            close();
            throw e;
        }
        judges.beside(closed -> {
            kept.look();
            WarmUp.run(opinions, closed);
        });
        return this;
    }

    private Set<String> hosts() {
        return Set.of(HOST + ":" + port(), "localhost:" + port());
    }

    private int port() {
        return server.port();
    }

    /** Lets a request in, or ends it. */
    private void admit(Context context) {
        if (Door.reads(context) && context.path().equals("/") && guard.opens(context.queryParam("key"))) {
            context.header("Set-Cookie", guard.cookie());
            context.redirect("/", HttpStatus.SEE_OTHER);
            context.skipRemainingHandlers();
            return;
        }
        if (!guard.opens(context.cookie(guard.cookieName()))) {
            throw new HttpResponseException(
                    HttpStatus.UNAUTHORIZED.getCode(),
                    "open the desk by the whole address that pipwright desk has printed");
        }
    }

    /**
     * The address with the key.
     *
     * @return what a browser is to open
     */
    public String address() {
        return "http://" + HOST + ":" + port() + "/?key=" + guard.key();
    }

    /**
     * How devices of the class come in.
     *
     * @return empty if they cannot
     */
    public Optional<Tablets> tablets() {
        return guests.map(GuestServer::tablets);
    }

    @Override
    public void close() {
        guests.ifPresent(GuestServer::close);
        streams.close();
        server.stop();
        judges.close();
    }
}
