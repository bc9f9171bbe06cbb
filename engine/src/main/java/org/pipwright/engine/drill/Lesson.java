package org.pipwright.engine.drill;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/**
 * What an exercise of a theme must have besides a clear answer, so that there is something to learn from it. The limits are
 * our own.
 */
final class Lesson {
    /** With fewer legal plays there is little to choose. */
    static final int FEWEST_PLAYS = 4;

    /** An answer that is better than any other by so much more than asked for is plain, in points. */
    private static final double PLAIN = 0.3;

    /** Whether to double in a race is a question between these chances to win. */
    private static final double MIN_WIN = 0.5;

    private static final double MAX_WIN = 0.95;

    /** Games of a class seldom have more checkers on a bar. */
    private static final int MAX_ON_BAR = 3;

    private Lesson() {}

    /** Whether a position is one that games of people lead to. */
    static boolean usual(Position position) {
        return Math.max(position.count(Planes.BAR), position.opponentCount(Planes.BAR)) <= MAX_ON_BAR;
    }

    /** Of a play. */
    static boolean in(PlayExercise exercise, Clarity clarity) {
        return exercise.ranking().size() >= FEWEST_PLAYS && !plain(exercise, clarity);
    }

    /** Of a decision about the cube, with the chances of the side on roll. */
    static boolean in(CubeExercise exercise, Theme theme, Outcomes chances, Clarity clarity) {
        return !plain(exercise, clarity) && (theme != Theme.RACE_DOUBLES || raceDouble(exercise, chances));
    }

    private static boolean plain(Exercise exercise, Clarity clarity) {
        return exercise.margin() > clarity.margin() + PLAIN;
    }

    /** Playing on for a gammon is no lesson about races, and what is won or lost already is none at all. */
    static boolean raceDouble(CubeExercise exercise, Outcomes chances) {
        double win = chances.win();
        return !exercise.values().tooGood() && win >= MIN_WIN && win <= MAX_WIN;
    }
}
