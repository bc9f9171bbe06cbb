/** Reduced games: solving them, and what a net's plays lose in them. */
package org.pipwright.bench.exact;
