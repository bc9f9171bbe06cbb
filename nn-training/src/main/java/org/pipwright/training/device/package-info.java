/** What training on another device than the processor looks like from outside; its own module brings it. */
package org.pipwright.training.device;
