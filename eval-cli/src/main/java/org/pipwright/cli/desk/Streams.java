package org.pipwright.cli.desk;

import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.sse.SseClient;
import io.javalin.http.sse.SseHandler;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * The streams of a desk. A page has one at most, and only while something is worked on for it; a closed page is noticed
 * within a second or two, because something is sent to it every second.
 */
final class Streams implements AutoCloseable {
    private static final int MAX = 24;

    private final Set<Stream> open = ConcurrentHashMap.newKeySet();
    private final ScheduledExecutorService threads = Executors.newScheduledThreadPool(1, task -> daemon(task));

    Streams() {
        threads.scheduleWithFixedDelay(() -> open.forEach(Stream::beat), 1, 1, TimeUnit.SECONDS);
    }

    private static Thread daemon(Runnable task) {
        Thread thread = new Thread(task, "pipwright-stream");
        thread.setDaemon(true);
        return thread;
    }

    /**
     * Answers with a stream.
     *
     * @param work reads a request, and says what is to be worked on and sent beside it
     * @return what handles such requests
     */
    Handler handler(Function<Context, Consumer<Stream>> work) {
        return new SseHandler(client -> {
            try {
                begin(client, work.apply(client.ctx()));
            } catch (RefusedException e) {
                begin(client, stream -> stream.say(e.getMessage()));
            }
        });
    }

    private void begin(SseClient client, Consumer<Stream> work) {
        client.keepAlive();
        Stream stream = new Stream(client);
        if (open.size() >= MAX) {
            stream.say("Too many pages wait for answers: close some.");
            stream.end();
            return;
        }
        open.add(stream);
        daemon(() -> run(stream, work)).start();
    }

    private void run(Stream stream, Consumer<Stream> work) {
        try {
            work.accept(stream);
        } catch (CancellationException e) {
            // The page has gone: nobody is to be told.
        } catch (IllegalArgumentException e) {
            stream.say("There is no answer: " + e.getMessage());
        } finally {
            open.remove(stream);
            stream.end();
        }
    }

    @Override
    public void close() {
        threads.shutdownNow();
        open.forEach(Stream::end);
    }
}
