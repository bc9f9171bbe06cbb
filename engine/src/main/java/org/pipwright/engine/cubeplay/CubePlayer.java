package org.pipwright.engine.cubeplay;

import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.position.Position;

/** Decides about the cube. An instance serves one thread, since it may keep buffers. */
public interface CubePlayer {
    /**
     * Chooses a cube action.
     *
     * @param position the position before the roll, seen from the side on roll, which is the side that doubles
     * @param game the game's cube, with more than one action allowed
     * @return one of {@link CubeGame#actions()}
     */
    CubeAction act(Position position, CubeGame game);
}
