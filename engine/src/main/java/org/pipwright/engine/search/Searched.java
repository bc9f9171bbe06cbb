package org.pipwright.engine.search;

import org.pipwright.engine.evaluation.Outcomes;

/**
 * One result of a roll as a search has valued it.
 *
 * @param result its index among the results given
 * @param outcomes the six chances for the side that plays
 * @param lookahead number of future rolls averaged over
 */
public record Searched(int result, Outcomes outcomes, int lookahead) {}
