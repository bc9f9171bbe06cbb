package org.pipwright.cli.desk;

import io.javalin.http.sse.SseClient;
import org.pipwright.cli.page.Pages;

/** Events on their way to a page that is being looked at. */
final class Stream {
    private final SseClient client;
    private volatile boolean ended;

    Stream(SseClient client) {
        this.client = client;
        client.onClose(() -> ended = true);
    }

    /** Whether nobody listens any more. */
    boolean gone() {
        return ended || client.terminated();
    }

    /** Sends a part of a page. */
    synchronized void send(String event, String html) {
        if (!gone()) {
            client.sendEvent(event, html);
        }
    }

    /** Tells something to those who do not see what has changed. */
    void say(String words) {
        send("said", Pages.of("desk/said.jte", words));
    }

    /** Says nothing, to learn whether anybody still listens. */
    synchronized void beat() {
        if (!gone()) {
            client.sendComment("");
        }
    }

    /** Tells the page that this is all. */
    synchronized void end() {
        if (!gone()) {
            // Browsers do not hear of events without data.
            client.sendEvent("end", "end");
            client.close();
        }
        ended = true;
    }
}
