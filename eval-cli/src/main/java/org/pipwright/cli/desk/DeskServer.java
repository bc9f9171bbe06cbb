package org.pipwright.cli.desk;

import io.javalin.Javalin;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Optional;
import org.pipwright.cli.page.Resource;

/** The server of a desk. It listens on the loopback address alone and answers whom {@link Guard} lets in. */
public final class DeskServer implements AutoCloseable {
    private static final String HOST = "127.0.0.1";
    private static final long LARGEST_REQUEST = 64 << 10;
    private static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self';"
            + " img-src 'self' data:; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";
    private static final String HTMX = "/META-INF/resources/webjars/htmx.org/2.0.10/dist/htmx.min.js";
    private static final String EVENTS = "/META-INF/resources/webjars/htmx-ext-sse/2.2.2/sse.js";

    private static final List<String> SHEETS =
            List.of("desk.css", "board.css", "turns.css", "record.css", "practice.css");
    private static final List<String> SCRIPTS = List.of("desk.js", "board.js", "stream.js");

    private final Javalin server;
    private final Judges judges;
    private final Streams streams = new Streams();
    private final Guard guard = new Guard(this::port);

    /**
     * Starts a desk.
     *
     * @param setup what it needs
     * @throws io.javalin.util.JavalinBindException if the port is taken
     */
    public DeskServer(DeskSetup setup) {
        judges = new Judges(setup.knowledge(), setup.threads());
        String net = setup.nets().get(0);
        Tables tables = new Tables();
        PlayRoutes play = new PlayRoutes(setup, tables, judges);
        Opinions opinions = new Opinions(judges, net);
        BoardRoutes board = new BoardRoutes(opinions, new BoardRollout(judges, net, setup.threads()), streams);
        Records records = new Records(setup.opened(), tables, record -> judges.review(record, net));
        PracticeLog log = new PracticeLog(setup.log());
        PracticeRoutes practice = new PracticeRoutes(
                new PracticeSources(records, setup.positions(), log), chosen -> judges.practice(chosen, net, log));
        server = Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            config.startup.showOldJavalinVersionWarning = false;
            config.startup.startupWatcherEnabled = false;
            config.http.maxRequestSize = LARGEST_REQUEST;
            config.routes.before(this::admit);
            for (String sheet : SHEETS) {
                config.routes.get("/assets/" + sheet, context -> asset(context, "text/css", sheet));
            }
            for (String script : SCRIPTS) {
                config.routes.get("/assets/" + script, context -> asset(context, "text/javascript", script));
            }
            config.routes.get("/assets/htmx.js", context -> library(context, HTMX));
            config.routes.get("/assets/sse.js", context -> library(context, EVENTS));
            play.add(config.routes);
            board.add(config.routes);
            new PictureRoutes().add(config.routes);
            new ClassRoutes(opinions).add(config.routes);
            new RecordRoutes(records, opinions, streams).add(config.routes);
            practice.add(config.routes);
        });
        server.start(HOST, setup.port());
        judges.prepare(net);
    }

    private int port() {
        return server.port();
    }

    private static void asset(Context context, String type, String name) {
        context.contentType(type + "; charset=utf-8").result(Resource.text(name));
    }

    private static void library(Context context, String resource) {
        context.contentType("text/javascript").result(DeskServer.class.getResourceAsStream(resource));
    }

    /** Lets a request in, or ends it. */
    private void admit(Context context) {
        context.header("Content-Security-Policy", POLICY);
        context.header("X-Content-Type-Options", "nosniff");
        // With no-referrer, browsers would leave the origin out of forms that are sent, and those would be refused.
        context.header("Referrer-Policy", "same-origin");
        context.header("Cross-Origin-Resource-Policy", "same-origin");
        context.header("Cache-Control", "no-store");
        boolean reads = context.method().toString().equals("GET");
        Optional<String> refusal = guard.refusal(
                context.header("Host"), context.header("Origin"), context.header("Sec-Fetch-Site"), reads);
        if (refusal.isPresent()) {
            throw new HttpResponseException(HttpStatus.FORBIDDEN.getCode(), refusal.get());
        }
        if (!reads && context.header("Content-Length") == null) {
            // Whatever comes in pieces could be of any size; browsers send forms as a whole.
            throw new HttpResponseException(
                    HttpStatus.LENGTH_REQUIRED.getCode(), "say how long the request is, with Content-Length");
        }
        if (reads && context.path().equals("/") && guard.opens(context.queryParam("key"))) {
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

    @Override
    public void close() {
        streams.close();
        server.stop();
        judges.close();
    }
}
