package org.pipwright.engine.cube;

import org.pipwright.engine.PublicApi;
import org.pipwright.engine.rules.GameResult;

/**
 * Money play: games whose points simply add up, with no match to win (the points need not be money).
 *
 * @param jacoby whether gammons and backgammons count as single games while the cube has not been turned (common
 *     practice, no source; named after Oswald Jacoby)
 * @param beavers whether a double may be answered by a beaver
 */
@PublicApi
public record MoneyStakes(boolean jacoby, boolean beavers) implements Stakes {
    /** The Jacoby rule, no beavers. */
    public static final MoneyStakes USUAL = new MoneyStakes(true, false);

    @Override
    public boolean mayDouble(CubeState cube) {
        return cube.turnable();
    }

    @Override
    public boolean mayBeaver(CubeState cube) {
        return beavers && cube.value() <= CubeState.HIGHEST / 4;
    }

    @Override
    public int points(GameResult result, CubeState cube) {
        boolean unturned = cube.owner() == CubeOwner.CENTRE;
        return jacoby && unturned ? cube.value() : result.points(cube.value());
    }

    @Override
    public MoneyStakes swapped() {
        return this;
    }
}
