package org.pipwright.cli.desk;

import java.util.Comparator;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/** Who may come in from other devices: whoever has typed the code on the teacher's screen, with a key of his own. */
final class Guests {
    /** Devices of a large class, and then some. */
    static final int MAX = 60;

    /** Characters that are not mistaken for one another. */
    private static final String ALPHABET = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";

    private static final int LENGTH = 6;

    /** Pages ask every two seconds; who has missed several times is away. */
    private static final long AWAY = TimeUnit.SECONDS.toNanos(10);

    private final LongSupplier clock;
    private final WrongCodes wrong;
    private final Map<String, Long> seen = new HashMap<>();
    private String code = Secret.of(ALPHABET, LENGTH);

    /** What becomes of a code. */
    enum Entry {
        /** It is the code. */
        RIGHT,
        /** It is not. */
        WRONG,
        /** It was not looked at: too many wrong ones came before. */
        WAIT,
        /** There is no room. */
        FULL
    }

    /**
     * Nobody yet, and a fresh code.
     *
     * @param clock the time in nanoseconds
     */
    Guests(LongSupplier clock) {
        this.clock = clock;
        wrong = new WrongCodes(clock);
    }

    /** The code to be typed. */
    synchronized String code() {
        return code;
    }

    /** Another code; those who are in have to type it too. */
    synchronized void renew() {
        code = Secret.of(ALPHABET, LENGTH);
        seen.clear();
    }

    /** Looks at a code; small letters and spaces do not matter. */
    synchronized Entry look(String address, String typed) {
        if (wrong.waits(address)) {
            return Entry.WAIT;
        }
        String plain = typed == null ? "" : typed.replaceAll("[\\s-]", "").toUpperCase(Locale.ROOT);
        if (!Secret.same(plain, code)) {
            wrong.add(address);
            return Entry.WRONG;
        }
        return room() ? Entry.RIGHT : Entry.FULL;
    }

    private boolean room() {
        if (seen.size() >= MAX) {
            // Whoever has been away longest gives way.
            Optional<Map.Entry<String, Long>> longest =
                    seen.entrySet().stream().min(Comparator.comparing(each -> each.getValue() - clock.getAsLong()));
            longest.filter(each -> clock.getAsLong() - each.getValue() > AWAY)
                    .ifPresent(each -> seen.remove(each.getKey()));
        }
        return seen.size() < MAX;
    }

    /** A key for one who has typed the code. */
    synchronized String admit() {
        String key = Secret.key();
        seen.put(key, clock.getAsLong());
        return key;
    }

    /** Whether a key was given to somebody, who is here now. */
    synchronized boolean knows(String key) {
        return key != null && seen.computeIfPresent(key, (same, before) -> clock.getAsLong()) != null;
    }

    /** How many are here. */
    synchronized int present() {
        long now = clock.getAsLong();
        return (int) seen.values().stream().filter(at -> now - at <= AWAY).count();
    }
}
