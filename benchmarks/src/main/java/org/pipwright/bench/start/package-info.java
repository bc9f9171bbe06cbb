/** The start position and whole games, beside printed figures. */
package org.pipwright.bench.start;
