package org.pipwright.cli.desk;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.pipwright.cli.page.Resource;

/** What holds for every server of a desk, whoever may come in: whence requests come, their size, and what pages may do. */
final class Door {
    /** How browsers are to keep a cookie. */
    static final String COOKIE = "; Path=/; HttpOnly; SameSite=Strict";

    /** Style sheets and scripts hold nothing of anybody's, and the next page wants them again. */
    private static final String KEPT = "private, max-age=300";

    private static final long LARGEST_REQUEST = 64 << 10;
    private static final String POLICY = "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self';"
            + " img-src 'self' data:; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";
    private static final String HTMX = "/META-INF/resources/webjars/htmx.org/2.0.10/dist/htmx.min.js";
    private static final String EVENTS = "/META-INF/resources/webjars/htmx-ext-sse/2.2.2/sse.js";

    private static final List<String> SHEETS =
            List.of("desk.css", "board.css", "turns.css", "record.css", "practice.css");
    private static final List<String> SCRIPTS = List.of("desk.js", "board.js", "stream.js");

    static {
        // Jetty would have Java's whole management started to learn how wide a line of the processor's cache is.
        String line = "org.eclipse.jetty.util.referencesPerCacheLine";
        System.setProperty(line, System.getProperty(line, "16"));
    }

    private Door() {}

    /**
     * A server that does not listen yet.
     *
     * @param origins whence requests may come
     * @param routes adds what it answers, but for style sheets and scripts
     * @param more adds other settings
     */
    static Javalin server(Origins origins, Consumer<RoutesConfig> routes, Consumer<JavalinConfig> more) {
        return Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            config.startup.showOldJavalinVersionWarning = false;
            config.startup.startupWatcherEnabled = false;
            config.http.maxRequestSize = LARGEST_REQUEST;
            more.accept(config);
            config.routes.before(context -> check(context, origins));
            routes.accept(config.routes);
            for (String sheet : SHEETS) {
                config.routes.get("/assets/" + sheet, context -> asset(context, "text/css", sheet));
            }
            for (String script : SCRIPTS) {
                config.routes.get("/assets/" + script, context -> asset(context, "text/javascript", script));
            }
            config.routes.get("/assets/htmx.js", context -> library(context, HTMX));
            config.routes.get("/assets/sse.js", context -> library(context, EVENTS));
        });
    }

    private static void asset(Context context, String type, String name) {
        context.header("Cache-Control", KEPT);
        context.contentType(type + "; charset=utf-8").result(Resource.text(name));
    }

    private static void library(Context context, String resource) {
        context.header("Cache-Control", KEPT);
        context.contentType("text/javascript").result(Door.class.getResourceAsStream(resource));
    }

    /** Whether a request only reads. */
    static boolean reads(Context context) {
        return context.method().toString().equals("GET");
    }

    private static void check(Context context, Origins origins) {
        context.header("Content-Security-Policy", POLICY);
        context.header("X-Content-Type-Options", "nosniff");
        // With no-referrer, browsers would leave the origin out of forms that are sent, and those would be refused.
        context.header("Referrer-Policy", "same-origin");
        context.header("Cross-Origin-Resource-Policy", "same-origin");
        context.header("Cache-Control", "no-store");
        Optional<String> refusal = origins.refusal(
                context.header("Host"), context.header("Origin"), context.header("Sec-Fetch-Site"), reads(context));
        if (refusal.isPresent()) {
            throw new HttpResponseException(HttpStatus.FORBIDDEN.getCode(), refusal.get());
        }
        if (!reads(context) && context.header("Content-Length") == null) {
            // Whatever comes in pieces could be of any size; browsers send forms as a whole.
            throw new HttpResponseException(
                    HttpStatus.LENGTH_REQUIRED.getCode(), "say how long the request is, with Content-Length");
        }
        if (context.req().getContentLengthLong() > LARGEST_REQUEST) {
            // Before any of it is read; Javalin would read as much as is allowed first.
            throw new HttpResponseException(
                    HttpStatus.CONTENT_TOO_LARGE.getCode(), "requests have " + LARGEST_REQUEST + " bytes at most");
        }
    }
}
