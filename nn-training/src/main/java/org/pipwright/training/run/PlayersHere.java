package org.pipwright.training.run;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.search.Judgement;
import org.pipwright.training.selfplay.SampleTarget;

/** The threads of this machine. */
final class PlayersHere implements Players {
    private final RoundRules rules;
    private final RunKnowledge knowledge;
    private final Crew<Integer> workers;

    PlayersHere(RoundRules rules, RunKnowledge knowledge, Crew<Integer> workers) {
        this.rules = rules;
        this.knowledge = knowledge;
        this.workers = workers;
    }

    @Override
    public Round play(Wanted wanted, BooleanSupplier stop) {
        Function<Judgement, SampleTarget> targets = rules.targets(knowledge::taught);
        List<GamePlayer> players = new ArrayList<>();
        for (int w = 0; w < workers.size(); w++) {
            Judgement judgement = knowledge.of(wanted.model()).judgement();
            players.add(new GamePlayer(rules, wanted.lambda(), judgement, targets.apply(judgement)));
        }
        PlayedGame[] played = new PlayedGame[wanted.games()];
        workers.run(played.length, (worker, game) -> {
            if (!stop.getAsBoolean()) {
                played[game] = players.get(worker).play(wanted.first() + game);
            }
        });
        return stop.getAsBoolean() ? null : Round.of(Arrays.asList(played));
    }

    @Override
    public boolean elsewhere() {
        return false;
    }
}
