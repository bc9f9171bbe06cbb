package org.pipwright.cluster;

import java.util.function.Consumer;
import org.pipwright.engine.parallel.WorkforceException;

/** Sees that those whose results are put together are alike. */
final class Colleagues {
    private final String build;
    private final String here;
    private final Consumer<String> notes;
    private Delivery first;

    /** {@code build} and {@code here} are those of this process; {@code notes} is told what its user should know. */
    Colleagues(String build, String here, Consumer<String> notes) {
        this.build = build;
        this.here = here;
        this.notes = notes;
    }

    /**
     * Looks at who sends a delivery.
     *
     * @throws WorkforceException if its results do not fit those of the others
     */
    void look(Delivery delivery) {
        if (!delivery.build().equals(build)) {
            throw new WorkforceException("the worker on " + delivery.host() + " has another build of Pipwright ("
                    + delivery.build() + ", this is " + build + "): start it with the same jars");
        }
        if (first == null) {
            first = delivery;
            if (!delivery.arithmetic().equals(here)) {
                notes.accept("the workers compute with " + delivery.arithmetic() + ", this machine with " + here
                        + ": last digits may differ from this machine's own");
            }
        }
        if (!delivery.arithmetic().equals(first.arithmetic())) {
            throw new WorkforceException(
                    "the worker on " + delivery.host() + " computes with " + delivery.arithmetic()
                            + ", the one on " + first.host() + " with " + first.arithmetic()
                            + ": their results differ in last digits, so let workers with the same kind of processor work together");
        }
    }
}
