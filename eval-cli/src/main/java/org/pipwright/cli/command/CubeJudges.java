package org.pipwright.cli.command;

import java.util.function.Supplier;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.CubefulRanker;
import org.pipwright.engine.cubeplay.TermsByStakes;
import org.pipwright.engine.rollout.CubefulRollouts;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.search.Judgement;

/**
 * What commands judge with where the cube counts.
 *
 * @param cube the cube, seen from the side on roll
 * @param stakes what is played for, seen from the side on roll
 * @param terms makes one thread's terms
 * @param judgements makes what one thread judges positions with
 * @param threads how many there are
 */
record CubeJudges(
        CubeState cube, Stakes stakes, Supplier<CubeTerms> terms, Supplier<Judgement> judgements, int threads) {
    CubefulRanker ranker() {
        return new CubefulRanker(judgements, terms, threads);
    }

    CubefulRollouts rollouts(RolloutSettings settings) {
        try {
            return new CubefulRollouts(() -> judgements.get().evaluator(), this::bothSides, settings, threads);
        } catch (IllegalArgumentException e) {
            throw new UserError(e.getMessage());
        }
    }

    /** One thread's terms of both sides. */
    private TermsByStakes bothSides() {
        CubeTerms mine = terms.get();
        return new TermsByStakes(seen -> seen.equals(stakes) ? mine : mine.swapped());
    }
}
