package org.pipwright.training.cuda;

/**
 * One batch of lessons by addresses on the card.
 *
 * @param planes positions
 * @param index which of them
 * @param swapped whether the side second in memory is on roll; targets are then for the first side
 * @param targets six target chances a row
 * @param targetIndex which of them
 */
record Lessons(long planes, long index, boolean swapped, long targets, long targetIndex) {}
