package org.pipwright.training.run;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.stream.LongStream;
import org.pipwright.engine.judge.PortableKnowledge;
import org.pipwright.engine.parallel.Shared;
import org.pipwright.engine.parallel.Workforce;

/** Other machines, to which the net is sent for each round. */
final class PlayersElsewhere implements Players {
    private final RoundRules rules;
    private final RunKnowledge knowledge;
    private final Workforce workforce;
    private final Shared<PortableKnowledge> teacher;

    PlayersElsewhere(RoundRules rules, RunKnowledge knowledge, Workforce workforce) {
        this.rules = rules;
        this.knowledge = knowledge;
        this.workforce = workforce;
        teacher = knowledge
                .teacher()
                .map(net -> workforce.share(knowledge.of(net).portable()))
                .orElse(null);
    }

    @Override
    public Round play(Wanted wanted, BooleanSupplier stop) {
        Shared<PortableKnowledge> net =
                workforce.share(knowledge.of(wanted.model()).portable());
        try {
            List<PlayedGame> played = new ArrayList<>(wanted.games());
            workforce.inOrder(
                    new GameTrade(rules, wanted.lambda(), net, teacher),
                    LongStream.range(wanted.first(), wanted.first() + wanted.games())
                            .iterator(),
                    played::add,
                    stop);
            return stop.getAsBoolean() ? null : Round.of(played);
        } finally {
            net.drop();
        }
    }

    @Override
    public boolean elsewhere() {
        return true;
    }
}
