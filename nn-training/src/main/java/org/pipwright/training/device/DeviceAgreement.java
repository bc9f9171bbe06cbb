package org.pipwright.training.device;

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
}
