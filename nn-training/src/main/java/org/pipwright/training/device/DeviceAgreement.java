package org.pipwright.training.device;

import java.util.Locale;

/**
 * How well a device's decisions agree with those of the processor, which computes the same net with other rounding.
 *
 * @param onDevice whether the device answered for this player; if not, this machine's threads did, and there is nothing to
 *     compare
 * @param compared decisions between at least two plays that were made again by the processor
 * @param differing how many of them came out otherwise
 * @param cost what those cost on average over all compared, by the processor's equities, in points
 */
public record DeviceAgreement(boolean onDevice, long compared, long differing, double cost) {
    /** A player for whom this machine's threads answered. */
    public static final DeviceAgreement ON_THREADS = new DeviceAgreement(false, 0, 0, 0);

    /**
     * The agreement in words.
     *
     * @return a clause, without a full stop
     */
    public String words() {
        if (!onDevice) {
            return "answered for by the processor";
        }
        return String.format(
                Locale.ROOT,
                "%d of %d decisions differ from the processor's (%.2f %%), which costs %.5f points a decision",
                differing,
                compared,
                compared == 0 ? 0 : 100.0 * differing / compared,
                cost);
    }
}
