package org.pipwright.engine.record;

import org.pipwright.engine.PublicApi;
import org.pipwright.engine.score.MatchScore;

/**
 * What recorded games are played for.
 *
 * @param length points that win the match, with the Crawford rule; 0 for games counted one by one
 * @param jacoby in such games, whether gammons count only with a turned cube
 * @param beavers in such games, whether doubles may be beavered
 */
@PublicApi
public record Rules(int length, boolean jacoby, boolean beavers) {
    /**
     * Checks the rules.
     *
     * @param length points that win the match, 0 to {@value MatchScore#LONGEST}
     * @param jacoby whether the Jacoby rule is in force
     * @param beavers whether doubles may be beavered
     * @throws IllegalArgumentException if the length is out of range, or a match has rules of money play
     */
    public Rules {
        if (length < 0 || length > MatchScore.LONGEST) {
            throw new IllegalArgumentException("a match has 1 to " + MatchScore.LONGEST + " points, not " + length);
        }
        if (length > 0 && (jacoby || beavers)) {
            throw new IllegalArgumentException("a match has neither the Jacoby rule nor beavers");
        }
    }

    /**
     * Whether there is a match to win.
     *
     * @return false for games counted one by one
     */
    public boolean match() {
        return length > 0;
    }

    /**
     * Whether the cube may be turned: in a match to 1 point there is nothing to double (common practice, no source).
     *
     * @return false in a match to 1 point
     */
    public boolean cube() {
        return length != 1;
    }
}
