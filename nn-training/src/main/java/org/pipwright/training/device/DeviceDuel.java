package org.pipwright.training.device;

import org.pipwright.engine.duel.Tally;

/**
 * The outcome of a duel on a device.
 *
 * @param description the device, in words
 * @param tally the games
 * @param a how decisions of A agree with the processor's
 * @param b the same of B
 */
public record DeviceDuel(String description, Tally tally, DeviceAgreement a, DeviceAgreement b) {}
