/** Charts as SVG: what commands and measurements draw alike. */
package org.pipwright.charts;
