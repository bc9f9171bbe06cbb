package org.pipwright.engine.judge;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.roll.Roll;

/** Ranks plays by what an evaluator says of them and by nothing else: the plain twin of a judge without lookahead. */
public final class PlayRanker {
    private final PositionEvaluator evaluator;

    public PlayRanker(PositionEvaluator evaluator) {
        this.evaluator = evaluator;
    }

    /** Every play, the best first. */
    public List<PlayVerdict> rank(Position position, Roll roll) {
        List<Play> plays = Plays.legal(position, roll);
        float[] chances = new float[plays.size() * Outcomes.COUNT];
        evaluator.evaluateResults(position.toPlanes(), 0, Plays.results(plays), plays.size(), chances);
        List<PlayVerdict> verdicts = new ArrayList<>();
        for (int i = 0; i < plays.size(); i++) {
            Outcomes outcomes = Outcomes.of(chances, i * Outcomes.COUNT);
            Basis basis = plays.get(i).next().finished() ? Basis.EXACT : Basis.ESTIMATED;
            verdicts.add(new PlayVerdict(plays.get(i), outcomes.equity(), outcomes, Depth.STATIC, basis));
        }
        return PlayVerdict.inOrder(verdicts, 1);
    }
}
