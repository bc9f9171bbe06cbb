package org.pipwright.training.selfplay;

import java.io.Serializable;
import org.pipwright.engine.position.Position;
import org.pipwright.training.settings.SampledPositions;

/**
 * How games of self-play are begun, and which samples they give.
 *
 * @param start position that games begin from
 * @param randomOpenings share of games, 0 to 1, that begin with a few random turns
 * @param doublesMayOpen whether the first roll may be a double
 * @param maxTurns rolls of both sides, at least 1, after which a game is truncated and valued by the evaluator
 * @param sampled which positions may become samples
 * @param sampleShare share of these positions, 0 to 1, that become samples
 */
public record SelfPlayRules(
        Position start,
        double randomOpenings,
        boolean doublesMayOpen,
        int maxTurns,
        SampledPositions sampled,
        double sampleShare)
        implements Serializable {
    /**
     * Games from a position to their end, every position a sample.
     *
     * @param start position that games begin from
     * @return rules that change nothing else; the first roll is no double
     */
    public static SelfPlayRules plain(Position start) {
        return new SelfPlayRules(start, 0, false, Integer.MAX_VALUE, SampledPositions.ALL, 1);
    }
}
