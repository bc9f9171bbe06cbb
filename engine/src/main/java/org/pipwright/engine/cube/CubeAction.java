package org.pipwright.engine.cube;

import org.pipwright.engine.PublicApi;

/** What a side can do with the cube. */
@PublicApi
public enum CubeAction {
    /** Roll without doubling. */
    ROLL,
    /** Offer to go on for twice the stakes. */
    DOUBLE,
    /** Go on for twice the stakes and own the cube. */
    TAKE,
    /** Give the game up for the stakes before the double. */
    PASS,
    /** Take and at once double again, keeping the cube; only where beavers are agreed. */
    BEAVER
}
