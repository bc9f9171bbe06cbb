package org.pipwright.engine.drill;

import java.io.Serializable;

/**
 * An exercise found in a game, with what it teaches: a sheet should not teach the same too often.
 *
 * @param exercise the exercise
 * @param lesson a word for it, equal for exercises that teach the same; null where that does not matter
 */
record Found(Exercise exercise, String lesson) implements Serializable {}
