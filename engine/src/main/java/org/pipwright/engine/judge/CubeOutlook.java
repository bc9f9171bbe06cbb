package org.pipwright.engine.judge;

import java.util.Optional;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.cube.CubeWindow;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.cube.Market;

/**
 * What surrounds a cube decision.
 *
 * @param window take point and doubling window at the position's share of gammons, by the model of its regime, exact on a
 *     last roll; empty where exact values say more, and where a double gains nothing
 * @param gammons both sides' gammon values at the present cube; empty if a single game decides nothing
 * @param market what the next two rolls do; empty if the side on roll may not double
 */
@PublicApi
public record CubeOutlook(Optional<CubeWindow> window, Optional<GammonValues> gammons, Optional<Market> market) {}
