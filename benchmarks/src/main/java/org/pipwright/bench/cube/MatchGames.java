package org.pipwright.bench.cube;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.pipwright.engine.bearoff.RaceJudge;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.WalkGame;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.matchtable.CubeUse;
import org.pipwright.engine.matchtable.MatchPayoffs;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.rollout.Estimate;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.rollout.Start;
import org.pipwright.engine.score.MatchScore;

/**
 * Positions that have no exact values, played out at a score with each cube by a net without lookahead, games to their end
 * and luck taken off: one position a game of the net against itself, with contact, or a race beyond the tables. The model is
 * asked with the chances that the net gives, or in races a simulation, as a judge asks it.
 */
final class MatchGames implements AutoCloseable {
    private static final int LAST_TURN = 60;

    private final Knowledge knowledge;
    private final PositionEvaluator evaluator;
    private final RaceJudge races;
    private final Rollouts rollouts;
    private final long seed;
    private final MatchTable table = ShippedMatchTable.load();
    private long game;

    MatchGames(Knowledge knowledge, long seed, int trials, int threads) {
        this.knowledge = knowledge;
        this.seed = seed;
        evaluator = knowledge.judgement().evaluator();
        races = new RaceJudge(knowledge.tables().orElseThrow());
        rollouts = new Rollouts(
                knowledge::judgement,
                knowledge::terms,
                RolloutSettings.DEFAULT.withTrials(trials).withSeed(seed),
                threads);
    }

    /** So many positions of each kind; no score sees those of another. */
    Map<String, List<MatchKnown>> at(MatchScore score, int each) {
        Map<String, List<MatchKnown>> kinds = new LinkedHashMap<>();
        kinds.put("contact", new ArrayList<>());
        kinds.put("races beyond the tables", new ArrayList<>());
        while (kinds.values().stream().anyMatch(list -> list.size() < each)) {
            Position position = draw(game++);
            if (position == null) {
                continue;
            }
            List<MatchKnown> kind = kinds.get(position.contact() ? "contact" : "races beyond the tables");
            if (kind.size() < each) {
                Outcomes outcomes = position.contact()
                        ? evaluator.evaluate(position)
                        : races.outlook(position).outcomes();
                if (CubeFit.counts(outcomes.win())) {
                    kind.add(known(score, position, outcomes));
                }
            }
        }
        return kinds;
    }

    /** The position at a random turn of a game; null if it is over by then, or in the tables. */
    private Position draw(long number) {
        Dice dice = Dice.ofGame(seed, number);
        int wanted = 2 + dice.below(LAST_TURN);
        int[] turn = {0};
        Position[] found = {null};
        Player player = new EvaluatingPlayer(evaluator);
        new GameLoop()
                .play(Position.start(), dice.opening(), player, player, dice, dice, (planes, roll, legal, chosen) -> {
                    if (turn[0]++ == wanted) {
                        found[0] = Position.ofPlanes(planes, 0);
                    }
                });
        boolean open = found[0] != null && (found[0].contact() || knowledge.simulated(found[0]));
        return open ? found[0] : null;
    }

    private MatchKnown known(MatchScore score, Position position, Outcomes outcomes) {
        List<Start> starts = MatchKnown.CUBES.stream()
                .map(cube -> Start.rolling(position, cube))
                .collect(Collectors.toList());
        RolloutReport report = rollouts.compare(starts, new MatchStakes(score), 1, WorkFile.NONE, RolloutListener.NONE);
        double[] truth = new double[starts.size()];
        double[] errors = new double[truth.length];
        for (int k = 0; k < truth.length; k++) {
            Estimate value = report.of(k).value();
            truth[k] = value.mean();
            errors[k] = value.standardError();
        }
        GammonShares shares = GammonShares.of(outcomes);
        MatchPayoffs payoffs = new MatchPayoffs(table, score, shares);
        CubeUse use = CubeUse.of(position.toPlanes(), 0);
        return MatchKnown.of(score, use, payoffs, outcomes.win(), truth, errors, new WalkGame(use.walk(), payoffs));
    }

    @Override
    public void close() {
        rollouts.close();
    }
}
