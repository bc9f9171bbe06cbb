package org.pipwright.cli.command;

import java.util.Iterator;
import java.util.List;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.text.Excerpt;

/** What {@code --device} may name. */
final class Devices {
    static final String CPU = "cpu";
    static final String CUDA = "cuda";

    /** Trains only. */
    static final String THREADS = "threads";

    /** Those that play. */
    static final List<String> PLAYING = List.of(CPU, CUDA);

    /** Those that train. */
    static final List<String> TRAINING = List.of(CPU, THREADS, CUDA);

    private Devices() {}

    /** What a shell offers of those that play. */
    static final class Playing implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return PLAYING.iterator();
        }
    }

    /** What a shell offers of those that train. */
    static final class Training implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return TRAINING.iterator();
        }
    }

    /**
     * Makes sure that there is such a device.
     *
     * @throws UserError if there is none
     */
    static void require(String device, List<String> among) {
        if (!among.contains(device)) {
            throw new UserError("there is no device '" + Excerpt.of(device) + "': use "
                    + String.join(", ", among.subList(0, among.size() - 1)) + " or " + among.get(among.size() - 1));
        }
    }
}
