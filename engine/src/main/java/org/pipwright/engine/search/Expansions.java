package org.pipwright.engine.search;

import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.pipwright.engine.position.Planes;

/**
 * The positions that one question has led to and whose replies are known without lookahead: every step of a search goes on
 * from them, and so does who asks for the replies afterwards.
 */
final class Expansions {
    /** So many positions outlast a question about replies; a search drops all but a few plays after looking at them. */
    private static final int MOST = 16;

    private final Map<IntBuffer, Expansion> known = new HashMap<>();

    /** Used again by the next question. */
    private final List<Replies> room = new ArrayList<>();

    private int used;

    /** Makes room for another question. */
    void forget() {
        known.clear();
        used = 0;
    }

    /** Forgets everything if there is much of it. */
    void limit() {
        if (known.size() >= MOST) {
            forget();
        }
    }

    /** What is known of a position, or null. */
    Expansion find(int[] planes, int at) {
        return known.get(key(planes, at));
    }

    /** Room for one in so many parts, which nothing is known of yet. */
    Expansion make(int parts) {
        List<Replies> own = new ArrayList<>();
        for (int part = 0; part < parts; part++) {
            if (used == room.size()) {
                room.add(new Replies());
            }
            own.add(room.get(used++));
        }
        return new Expansion(own);
    }

    /** Keeps what has been found. */
    void keep(int[] planes, int at, Expansion found) {
        known.put(key(planes, at), found);
    }

    private static IntBuffer key(int[] planes, int at) {
        return IntBuffer.wrap(Arrays.copyOfRange(planes, at, at + Planes.STRIDE));
    }
}
