package org.pipwright.training.device;

/**
 * What is known of games that a net played against itself on a device, besides the games.
 *
 * @param description the device, in words
 * @param agreement how decisions of the first games agree with the processor's
 */
public record DeviceSelfPlay(String description, DeviceAgreement agreement) {}
