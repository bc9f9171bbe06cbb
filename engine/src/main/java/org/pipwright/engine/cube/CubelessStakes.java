package org.pipwright.engine.cube;

import org.pipwright.engine.PublicApi;
import org.pipwright.engine.rules.GameResult;

/** Points of a game without a cube: 1, for a gammon 2, for a backgammon 3. */
@PublicApi
public record CubelessStakes() implements Stakes {
    @Override
    public boolean mayDouble(CubeState cube) {
        return false;
    }

    @Override
    public boolean mayBeaver(CubeState cube) {
        return false;
    }

    @Override
    public int points(GameResult result, CubeState cube) {
        return result.points(1);
    }

    @Override
    public CubelessStakes swapped() {
        return this;
    }
}
