package org.pipwright.engine.judge;

import java.io.Serializable;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.ranking.Grade;

/**
 * What a judge answers. Immutable.
 *
 * @param question what was asked
 * @param value what the position is worth to the side on roll, after the best play or with the right cube action: points
 *     per game; with a cube points per unit of it, or the chance to win the match
 * @param outcomes the six chances of the side on roll, after the best play if there is a roll
 * @param depth how deeply the value was looked at; its error is in the unit of the value
 * @param basis what the value rests on: with a cube {@link Basis#EXACT} only if the value itself comes from an exact table,
 *     {@link Basis#SIMULATED} if the chances it was worked out from were simulated, {@link Basis#DISTRIBUTIONS} if they
 *     come from tables, else {@link Basis#ESTIMATED}
 * @param plays the plays asked about, those looked at most deeply first, each group best first; empty before the roll
 * @param cube values of the cube actions; null without a cube and where a roll is played
 * @param point what a point is worth in the unit of the value: 1 but in a match, where it is half of the difference between
 *     winning and losing a single game at the present cube (common practice, no source)
 */
@PublicApi
public record Verdict(
        Question question,
        double value,
        Outcomes outcomes,
        Depth depth,
        Basis basis,
        List<PlayVerdict> plays,
        CubeValues cube,
        double point)
        implements Serializable {
    /** Plays that are played out unless asked otherwise. */
    public static final int CANDIDATES = 5;

    /** In points per game; as a rule far above the net's error in the difference between two plays of a roll. */
    private static final double CLOSE = 0.16;

    /**
     * Copies the plays.
     *
     * @param question what was asked
     * @param value in its unit
     * @param outcomes six chances
     * @param depth how deep
     * @param basis what it rests on
     * @param plays best first
     * @param cube values, or null
     * @param point in the unit of the value
     */
    public Verdict {
        plays = List.copyOf(plays);
    }

    /** The verdict on plays in order. */
    static Verdict of(Question question, List<PlayVerdict> plays, double point) {
        PlayVerdict best = plays.get(0);
        return new Verdict(question, best.value(), best.outcomes(), best.depth(), best.basis(), plays, null, point);
    }

    /**
     * The best play.
     *
     * @return the first of the plays
     * @throws IllegalStateException if there was no roll
     */
    public PlayVerdict best() {
        if (plays.isEmpty()) {
            throw new IllegalStateException("no best play without a roll");
        }
        return plays.get(0);
    }

    /**
     * The plays that are worth playing out: the best, as long as they are close and looked at as deeply.
     *
     * @param most how many at most, at least 1
     * @return the plays, best first
     */
    public List<Play> candidates(int most) {
        int deepest = best().depth().lookahead();
        return plays.stream()
                .limit(most)
                .filter(each -> each.depth().lookahead() == deepest && each.points() >= -CLOSE)
                .map(PlayVerdict::play)
                .collect(Collectors.toList());
    }

    /**
     * Standard error of the value because of the dice of games.
     *
     * @return in the unit of the value; 0 without games
     */
    public double error() {
        return depth.error();
    }

    /**
     * The cost of a cube action in a word.
     *
     * @param action one of the cube's choices
     * @return the grade of its cost in points
     * @throws IllegalArgumentException if the action is no choice here
     * @throws IllegalStateException if the cube was not asked about
     */
    public Grade grade(CubeAction action) {
        if (cube == null) {
            throw new IllegalStateException("no cube action was asked about");
        }
        return Grade.ofCost(Math.min(0, cube.cost(action)) / point);
    }
}
