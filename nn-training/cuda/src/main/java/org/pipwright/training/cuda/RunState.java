package org.pipwright.training.cuda;

import java.util.List;

/**
 * Where a run stands: with the settings, all that is needed to go on. Games and the memory of lessons begin anew.
 *
 * @param seconds seconds of training so far
 * @param copied seconds of copying among them
 * @param began seconds after which self-play began; not a number if it has not
 * @param targets targets made in self-play and copying
 * @param games games finished in self-play
 * @param seeds seeds used up
 * @param nets the networks, in the recipe's order
 */
record RunState(
        double seconds, double copied, double began, long targets, long games, long seeds, List<NetState> nets) {}
