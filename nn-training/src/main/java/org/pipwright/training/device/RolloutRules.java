package org.pipwright.training.device;

import java.util.function.Supplier;
import org.pipwright.engine.evaluation.Horizon;
import org.pipwright.engine.network.Net;

/**
 * How games are rolled out on a device. Both sides choose among the plays that the quick net keeps: of those within a margin
 * of the one the deep net likes best, the one that is best by lookahead 1.
 *
 * @param deep the net that judges
 * @param quick the net that drops plays before it, six at most staying
 * @param keepMargin equity within which the quick net keeps plays, in points
 * @param choices most plays that are looked at one roll further; with 1 the deep net chooses without lookahead
 * @param choiceMargin equity within which they are, in points
 * @param truncation rolls after which a game is truncated and valued by lookahead 1, if there still is contact: races go
 *     on to where their chances are known; 0 for never
 * @param horizons makes for a thread what ends games because their chances are known
 * @param gamesAtOnce positions that the device looks at in one go, at least 1
 * @param lanes groups of games: while one is on the device, plays of another are made; at least 1
 */
public record RolloutRules(
        Net deep,
        Net quick,
        double keepMargin,
        int choices,
        double choiceMargin,
        int truncation,
        Supplier<Horizon> horizons,
        int gamesAtOnce,
        int lanes) {}
