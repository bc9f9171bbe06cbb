/** Games of a net against itself, played by all threads and handed on in order. */
package org.pipwright.bench.games;
