package org.pipwright.training.cuda;

import java.util.List;

/** The plays of a lane of games and what lookahead finds out about them. */
interface LaneJudge {
    /** The plays; made by the lane without regard to who else uses the accelerator. */
    PlaysBatch plays();

    /** Takes the plays in; likewise without regard to others. */
    void upload();

    /**
     * Looks ahead by one roll: the quick network prunes the replies, the deep one judges what is left. The answers go to
     * the plays.
     */
    void judge();

    /** Results that the deep network judged in the last call of {@link #judge}. */
    int kept();

    /**
     * Draws a batch of those results, and each of some networks learns what the deep one says of them. To be called before
     * another lane is judged.
     */
    void teach(long seed, float rate, List<Integer> nets);
}
