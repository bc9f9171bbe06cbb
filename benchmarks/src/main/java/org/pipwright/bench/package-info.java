/** Measurements: fixed positions and networks that they share. */
package org.pipwright.bench;
