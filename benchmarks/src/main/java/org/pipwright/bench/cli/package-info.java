/** The command line of the measurements. */
package org.pipwright.bench.cli;
