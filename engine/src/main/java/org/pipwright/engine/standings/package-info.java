/** Several players, all against all: the duels, and ratings by least squares. */
package org.pipwright.engine.standings;
