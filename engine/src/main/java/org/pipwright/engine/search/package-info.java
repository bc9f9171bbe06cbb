/** Lookahead: the chances of a position after averaging over future rolls, and plays ranked by it. */
package org.pipwright.engine.search;
