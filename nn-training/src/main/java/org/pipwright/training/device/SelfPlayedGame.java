package org.pipwright.training.device;

/**
 * A game that a net played against itself from the start to its end, and what the net said of some of its positions.
 *
 * @param planes those positions before the roll, eight ints each, the side on roll first
 * @param chances what the net says of each without lookahead, six chances for the side on roll
 * @param beginnerOnRoll for each, whether the side that began the game is on roll
 * @param outcome how the game ended for the side that began it: place of that outcome among the six chances
 */
public record SelfPlayedGame(int[] planes, float[] chances, boolean[] beginnerOnRoll, int outcome) {}
