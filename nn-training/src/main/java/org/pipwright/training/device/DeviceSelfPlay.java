package org.pipwright.training.device;

/**
 * On which device a net played against itself, and how well it agrees with the processor.
 *
 * @param description the device, in words
 * @param agreement how decisions of the first games agree with the processor's
 */
public record DeviceSelfPlay(String description, DeviceAgreement agreement) {}
