package org.pipwright.engine.explain;

import org.pipwright.engine.play.Play;
import org.pipwright.engine.roll.Roll;

/**
 * One roll of the opponent, and what it changes.
 *
 * @param roll the roll
 * @param reply the opponent's best reply
 * @param equity points per game after it, cubeless, for the side that has played
 * @param change that equity less the mean over the rolls: negative for a roll that is good for the opponent
 */
public record Swing(Roll roll, Play reply, double equity, double change) {}
