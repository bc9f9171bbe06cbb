package org.pipwright.cli.desk;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/**
 * Wrong codes of the last minute. Who has sent a few has to wait, and so has everybody once very many were wrong, so that
 * codes are not found by trying, from many addresses either.
 */
final class WrongCodes {
    /** Wrong codes a minute from one address. */
    static final int MAX_OF_ONE = 5;

    /** Wrong codes a minute from all. */
    static final int MAX_OF_ALL = 60;

    private static final long NANOS = TimeUnit.MINUTES.toNanos(1);

    private final LongSupplier clock;
    private final Deque<Wrong> wrong = new ArrayDeque<>();

    private record Wrong(String address, long at) {}

    /**
     * None yet.
     *
     * @param clock the time in nanoseconds
     */
    WrongCodes(LongSupplier clock) {
        this.clock = clock;
    }

    /** Whether an address has to wait before its next code is looked at. */
    synchronized boolean waits(String address) {
        while (!wrong.isEmpty() && clock.getAsLong() - wrong.peek().at > NANOS) {
            wrong.remove();
        }
        return wrong.size() >= MAX_OF_ALL
                || wrong.stream().filter(each -> each.address.equals(address)).count() >= MAX_OF_ONE;
    }

    /** A wrong code has come. */
    synchronized void add(String address) {
        wrong.add(new Wrong(address, clock.getAsLong()));
    }
}
