package org.pipwright.training.cuda;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import org.pipwright.engine.network.Model;

/** Threads that play games of a small net against itself, and the lessons of its chances they make. */
final class Copying implements AutoCloseable {
    private static final int LISTS_AHEAD = 64;

    private final BlockingQueue<LessonList> lists = new ArrayBlockingQueue<>(LISTS_AHEAD);
    private final List<Thread> players = new ArrayList<>();
    private volatile RuntimeException failure;

    /**
     * Starts the threads.
     *
     * @param lessons lessons a list, at least
     */
    Copying(Model model, int lessons, int threads, Seeds seeds) {
        for (int i = 0; i < threads; i++) {
            SplittableRandom random = new SplittableRandom(seeds.next());
            Thread player = new Thread(() -> play(new CopyGames(model, random), lessons), "pipwright-copying");
            player.setDaemon(true);
            player.start();
            players.add(player);
        }
    }

    private void play(CopyGames games, int lessons) {
        try {
            while (true) {
                LessonList list = new LessonList();
                games.play(lessons, list);
                lists.put(list);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (RuntimeException e) {
            failure = e;
        }
    }

    /** The next list. */
    LessonList next() {
        try {
            LessonList list = null;
            while (list == null) {
                if (failure != null) {
                    throw failure;
                }
                list = lists.poll(1, TimeUnit.SECONDS);
            }
            return list;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while copying", e);
        }
    }

    @Override
    public void close() {
        players.forEach(Thread::interrupt);
    }
}
