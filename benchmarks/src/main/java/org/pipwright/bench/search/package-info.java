/** What lookahead costs and what narrowing plays down loses. */
package org.pipwright.bench.search;
