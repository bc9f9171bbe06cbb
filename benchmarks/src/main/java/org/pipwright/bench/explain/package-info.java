/** How much the facts that explanations tell count on average. */
package org.pipwright.bench.explain;
