package org.pipwright.engine.ranking;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** Ranks the plays of a roll by what an evaluator makes of the positions they lead to. Serves one thread. */
public final class PlayRanker {
    private final PositionEvaluator evaluator;
    private final Depth depth;

    /**
     * A ranker.
     *
     * @param evaluator what it judges with
     * @param depth how deeply that evaluator looks
     */
    public PlayRanker(PositionEvaluator evaluator, Depth depth) {
        this.evaluator = evaluator;
        this.depth = depth;
    }

    /**
     * Ranks all plays of a roll.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @return every play, distinct by resulting position, best first; at least one
     * @throws IllegalArgumentException if the game is over
     */
    public List<RankedPlay> rank(Position position, Roll roll) {
        return ordered(position, Plays.legal(position, roll));
    }

    /**
     * Ranks some plays of a roll among themselves.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param plays plays of that position and roll; one given twice counts once
     * @return these plays, best first; costs are against the best of them
     * @throws IllegalArgumentException if a play is not one of this position and roll
     */
    public List<RankedPlay> rank(Position position, Roll roll, List<Play> plays) {
        return ordered(position, Plays.distinct(position, roll, plays));
    }

    private List<RankedPlay> ordered(Position position, List<Play> plays) {
        int[] results = Plays.results(plays);
        float[] chances = new float[plays.size() * Outcomes.COUNT];
        evaluator.evaluateResults(position.toPlanes(), 0, results, plays.size(), chances);
        List<RankedPlay.Evaluated> evaluated = new ArrayList<>(plays.size());
        for (int i = 0; i < plays.size(); i++) {
            Outcomes outcomes = Outcomes.of(chances, i * Outcomes.COUNT);
            evaluated.add(new RankedPlay.Evaluated(plays.get(i), outcomes, depth));
        }
        return RankedPlay.inOrder(evaluated);
    }
}
