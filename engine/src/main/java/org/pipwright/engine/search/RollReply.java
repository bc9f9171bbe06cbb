package org.pipwright.engine.search;

import org.pipwright.engine.PublicApi;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.roll.Roll;

/**
 * A roll and its best reply.
 *
 * @param roll the roll
 * @param play the reply
 * @param outcomes the six chances after it, for the side that plays it
 */
@PublicApi
public record RollReply(Roll roll, Play play, Outcomes outcomes) {}
