/** Progress of a training run on a terminal and in a log. */
package org.pipwright.cli.train;
