/** The one game loop: players, games and paired games. */
package org.pipwright.engine.match;
