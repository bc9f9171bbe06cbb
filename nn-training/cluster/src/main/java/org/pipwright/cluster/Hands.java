package org.pipwright.cluster;

import java.io.Serializable;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.pipwright.engine.parallel.Trade;

/** The workers of this process that know a trade: one for each task that runs at a time, kept from task to task. */
final class Hands<T extends Serializable, R extends Serializable> {
    /** Trades whose workers are kept: more than one process asks for at a time. */
    private static final int KEPT = 4;

    private static final Map<String, Hands<?, ?>> BY_TRADE = new LinkedHashMap<>();

    private final Trade<T, R> trade;
    private final Deque<Trade.Worker<T, R>> idle = new ArrayDeque<>();
    private boolean dismissed;

    private Hands(Trade<T, R> trade) {
        this.trade = trade;
    }

    /** Those who know a trade that has a name of its own; {@code trade} is asked for if they are the first here. */
    @SuppressWarnings("unchecked")
    static <T extends Serializable, R extends Serializable> Hands<T, R> of(
            String name, Supplier<? extends Trade<T, R>> trade) {
        synchronized (BY_TRADE) {
            Hands<T, R> hands = (Hands<T, R>) BY_TRADE.remove(name);
            hands = hands == null ? new Hands<>(trade.get()) : hands;
            BY_TRADE.put(name, hands);
            if (BY_TRADE.size() > KEPT) {
                BY_TRADE.remove(BY_TRADE.keySet().iterator().next()).dismiss();
            }
            return hands;
        }
    }

    /** One of them, for this thread until it is given {@link #back}. */
    Trade.Worker<T, R> take() {
        synchronized (idle) {
            if (!idle.isEmpty()) {
                return idle.pop();
            }
        }
        return trade.hire();
    }

    void back(Trade.Worker<T, R> worker) {
        synchronized (idle) {
            if (!dismissed) {
                idle.push(worker);
                return;
            }
        }
        worker.close();
    }

    private void dismiss() {
        synchronized (idle) {
            dismissed = true;
            idle.forEach(Trade.Worker::close);
            idle.clear();
        }
    }
}
