package org.pipwright.training.device;

import java.util.List;
import org.pipwright.engine.position.Position;

/** Rolls games out on a device, many at once. An instance serves one thread. */
public interface DeviceRollouts {
    /**
     * Which device it is.
     *
     * @return the device, in words
     */
    String description();

    /**
     * Values positions by lookahead 1, with replies pruned by the quick net.
     *
     * @param positions unfinished positions
     * @return equity of the side on roll in each, in points
     */
    double[] lookahead(List<Position> positions);

    /**
     * Plays games until there are no more.
     *
     * @param games gives them
     */
    void play(RolledGames games);
}
