package org.pipwright.cli.command;

import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.cubeplay.CubefulPlay;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.ranking.RankedPlay;

/** Which plays are worth playing out if none are named: the best of a ranking, as long as they are close. */
final class Candidates {
    /** Most plays that are played out unless asked otherwise. */
    static final int MOST = 5;

    /** In points per game; far above what the net misjudges between two plays of a roll as a rule. */
    private static final double WITHIN = 0.16;

    private Candidates() {}

    static List<Play> of(List<RankedPlay> ranking, int most) {
        int deepest = ranking.get(0).depth().lookahead();
        return ranking.stream()
                .limit(most)
                .filter(line -> line.depth().lookahead() == deepest && line.cost() >= -WITHIN)
                .map(RankedPlay::play)
                .collect(Collectors.toList());
    }

    /** The same of a ranking with the cube; how close they are is told in points. */
    static List<Play> ofCubeful(List<CubefulPlay> ranking, int most) {
        int deepest = ranking.get(0).lookahead();
        return ranking.stream()
                .limit(most)
                .filter(line -> line.lookahead() == deepest && line.points() >= -WITHIN)
                .map(CubefulPlay::play)
                .collect(Collectors.toList());
    }
}
