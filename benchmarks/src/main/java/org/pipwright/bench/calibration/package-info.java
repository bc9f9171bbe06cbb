/** Whether what a net calls ten per cent happens one time in ten. */
package org.pipwright.bench.calibration;
