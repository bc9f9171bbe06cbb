/** What the cube's models need to know of real games: measured rates, the match table, the fit of cube efficiency. */
package org.pipwright.bench.cube;
