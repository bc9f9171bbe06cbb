/**
 * Training and games on another device than the processor, as the rest of Pipwright sees them; a module of its own
 * implements them.
 */
package org.pipwright.training.device;
