/** The desk: a board in the browser on one's own machine. */
package org.pipwright.cli.desk;
