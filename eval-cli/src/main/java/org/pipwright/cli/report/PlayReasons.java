package org.pipwright.cli.report;

import java.util.List;
import org.pipwright.engine.explain.Explanation;

/** Why a play is good, or what it lacks, in the sentences of {@code rank --explain}. */
public final class PlayReasons {
    private PlayReasons() {}

    /**
     * The sentences about one play.
     *
     * @param explanation facts about the best play and its rivals
     * @param place which play: 0 for the best, 1 for its first rival
     * @return short sentences
     */
    public static List<String> of(Explanation explanation, int place) {
        return place == 0
                ? PlayWords.sentences(explanation.best())
                : RivalWords.sentences(explanation.best(), explanation.rivals().get(place - 1), explanation.gammons());
    }
}
