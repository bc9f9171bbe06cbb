/** The report of a run: learning curves and opening choices as one HTML file. */
package org.pipwright.training.report;
