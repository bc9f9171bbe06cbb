package org.pipwright.training.run;

import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.judge.PortableKnowledge;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Trade;
import org.pipwright.engine.search.Judgement;

/**
 * Playing games of a round elsewhere, by their numbers.
 *
 * @param rules how
 * @param lambda of TD(lambda)
 * @param net what plays them
 * @param teacher what gives targets, where another net does; else null
 */
record GameTrade(RoundRules rules, float lambda, Shared<PortableKnowledge> net, Shared<PortableKnowledge> teacher)
        implements Trade<Long, PlayedGame> {
    @Override
    public Worker<Long, PlayedGame> hire() {
        Judgement judgement = net.get().judgement();
        GamePlayer player = new GamePlayer(
                rules, lambda, judgement, rules.targets(this::taught).apply(judgement));
        return (number, stopped) -> player.play(number);
    }

    private PositionEvaluator taught() {
        return teacher.get().judgement().evaluator();
    }
}
