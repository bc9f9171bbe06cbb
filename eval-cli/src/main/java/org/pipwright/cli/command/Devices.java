package org.pipwright.cli.command;

import java.util.Iterator;
import java.util.List;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.text.Excerpt;

/** What {@code --device} may name; what a shell offers for it. */
final class Devices implements Iterable<String> {
    static final String CPU = "cpu";
    static final String CUDA = "cuda";

    @Override
    public Iterator<String> iterator() {
        return List.of(CPU, CUDA).iterator();
    }

    /**
     * Makes sure that there is such a device.
     *
     * @throws UserError if there is none
     */
    static void require(String device) {
        if (!device.equals(CPU) && !device.equals(CUDA)) {
            throw new UserError("there is no device '" + Excerpt.of(device) + "': use " + CPU + " or " + CUDA);
        }
    }
}
