package org.pipwright.cluster;

import java.io.Serializable;

/**
 * What came of a parcel of tasks, as every build of Pipwright can read it.
 *
 * @param host the machine
 * @param build its {@link Build#id()}
 * @param arithmetic how it rounds
 * @param results what came of the tasks, in their order, as {@link Bytes} of an array; empty if the build is another than that
 *     of the process that asks
 * @param refusal why a task was refused; null if none was
 * @param nanos how long it took
 */
record Delivery(String host, String build, String arithmetic, byte[] results, String refusal, long nanos)
        implements Serializable {
    private static final long serialVersionUID = 1;
}
