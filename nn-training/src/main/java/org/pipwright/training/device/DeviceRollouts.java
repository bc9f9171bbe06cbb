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

    /**
     * Makes the first few hundred decisions of the games played so far again by this machine's threads: plays chosen between
     * at least two, in the same way.
     *
     * @return how they agree
     */
    DeviceAgreement agreement();
}
