package org.pipwright.engine.naive;

import java.util.Set;

/**
 * What a roll allows, as the naive generator found it.
 *
 * @param results all distinct resulting boards; the board itself alone if no checker can move
 * @param steps dice played, 0 to 2, or 0 to 4 of a double
 * @param larger whether the larger die can be played first
 * @param smaller whether the smaller die can be played first
 * @param largerThenSmaller whether both dice can be played, the larger first
 * @param smallerThenLarger whether both dice can be played, the smaller first
 */
public record NaivePlays(
        Set<NaiveBoard> results,
        int steps,
        boolean larger,
        boolean smaller,
        boolean largerThenSmaller,
        boolean smallerThenLarger) {}
