package org.pipwright.engine.search;

import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.evaluation.Outcomes;

/**
 * What a search has found of a position before the roll.
 *
 * @param outcomes six chances of the side on roll, both sides playing for points without the cube
 * @param values what its cube actions are worth to it
 * @param lookahead number of future rolls averaged over
 */
public record CubeValued(Outcomes outcomes, CubeValues values, int lookahead) {}
