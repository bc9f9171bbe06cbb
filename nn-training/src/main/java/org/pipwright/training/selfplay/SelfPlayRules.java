package org.pipwright.training.selfplay;

import org.pipwright.engine.position.Position;

/**
 * How games of self-play are begun, and which samples they give.
 *
 * @param start position that games begin from
 * @param varied share of games, 0 to 1, that begin after a few random turns instead
 * @param doublesMayOpen whether the first roll may be a double
 * @param sampled which positions may become samples
 * @param keep share of these positions, 0 to 1, that become samples
 * @param lookahead whether targets are the chances at lookahead 1 instead of those of TD(lambda)
 */
public record SelfPlayRules(
        Position start,
        double varied,
        boolean doublesMayOpen,
        SampledPositions sampled,
        double keep,
        boolean lookahead) {
    /**
     * Games from a position to their end, every position a sample with a target of TD(lambda).
     *
     * @param start position that games begin from
     * @return rules without further ado; the first roll is no double
     */
    public static SelfPlayRules plain(Position start) {
        return new SelfPlayRules(start, 0, false, SampledPositions.ALL, 1, false);
    }
}
