package org.pipwright.engine.bearoff;

import org.pipwright.engine.evaluation.Basis;

/**
 * What lies before one side of a race: distributions of its numbers of rolls.
 *
 * @param basis DISTRIBUTIONS if they come from the table, SIMULATED if from a simulation
 * @param off rolls to bear off all checkers
 * @param error how far the mean of these may be off, in rolls: a standard error, with what play by a guess was measured to
 *     cost; 0 from a table
 * @param first rolls to bear off the first, 0 if that is done
 * @param away rolls until no checker stands in the opponent's home, 0 if none does
 */
public record SideOutlook(Basis basis, RollSpread off, double error, RollSpread first, RollSpread away) {}
