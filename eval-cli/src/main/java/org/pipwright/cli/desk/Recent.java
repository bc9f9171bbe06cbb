package org.pipwright.cli.desk;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/** The things that were asked for last, by a name; what nobody has asked for the longest goes first. Shared by threads. */
final class Recent<K, V> {
    private final Map<K, V> kept;

    /** Keeps so many. */
    Recent(int most) {
        kept = new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1;

            @Override
            protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                return size() > most;
            }
        };
    }

    synchronized Optional<V> get(K name) {
        return Optional.ofNullable(kept.get(name));
    }

    /** What is kept, or else what is made now; whoever asks for anything meanwhile waits. */
    synchronized V made(K name, Supplier<V> make) {
        return kept.computeIfAbsent(name, absent -> make.get());
    }

    synchronized void put(K name, V thing) {
        kept.put(name, thing);
    }
}
