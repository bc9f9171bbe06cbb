/** How fast training is, beside the plain way to do it. */
package org.pipwright.bench.training;
