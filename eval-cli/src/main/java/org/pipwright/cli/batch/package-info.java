/** Many positions, one a line, answered with one line of JSON each, in order, on all cores. */
package org.pipwright.cli.batch;
