/** Work shared out over threads. */
package org.pipwright.training.parallel;
