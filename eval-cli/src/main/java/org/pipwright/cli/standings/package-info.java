/** Several players, all against all: ratings by least squares, and their chart. */
package org.pipwright.cli.standings;
