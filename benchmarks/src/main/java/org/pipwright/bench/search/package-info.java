/** What lookahead costs and what candidate pruning loses. */
package org.pipwright.bench.search;
