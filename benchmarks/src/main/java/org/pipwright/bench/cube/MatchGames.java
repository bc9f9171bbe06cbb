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
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.matchtable.CubeUse;
import org.pipwright.engine.matchtable.MatchPayoffs;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rollout.Estimate;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.rollout.Start;
import org.pipwright.engine.score.MatchScore;

/**
 * Positions that have no exact values, played out at a score with each cube by a net without lookahead, games to their end
 * and luck taken off: early and late ones with contact, and races beyond the tables. The model is
 * asked with the chances of as many games without the cube, or in races with those of a simulation, as a judge asks it.
 */
final class MatchGames implements AutoCloseable {
    private static final String RACES = "races beyond the tables";

    private static final String EARLY = "contact, 80 pips and more";

    private static final String LATE = "contact, below 80 pips";

    private static final double EARLY_PIPS = 80;

    private final Knowledge knowledge;
    private final RaceJudge races;
    private final Rollouts rollouts;
    private final DrawnPositions positions;
    private final MatchTable table = ShippedMatchTable.load();

    MatchGames(Knowledge knowledge, long seed, int trials, int threads) {
        this.knowledge = knowledge;
        positions = new DrawnPositions(knowledge.judgement().evaluator(), seed);
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
        List.of(EARLY, LATE, RACES).forEach(kind -> kinds.put(kind, new ArrayList<>()));
        while (kinds.values().stream().anyMatch(list -> list.size() < each)) {
            Position position = positions.next();
            if (!position.contact() && !knowledge.simulated(position)) {
                continue;
            }
            List<MatchKnown> kind = kinds.get(kind(position));
            if (kind.size() < each) {
                Outcomes outcomes = outcomes(position);
                if (CubeFit.counts(outcomes.win())) {
                    kind.add(known(score, position, outcomes));
                }
            }
        }
        return kinds;
    }

    /** Of contact by games without the cube, so that the errors of the net's own chances are none of the cube model's. */
    private Outcomes outcomes(Position position) {
        return position.contact()
                ? rollouts.odds(position, WorkFile.NONE, RolloutListener.NONE)
                        .of(0)
                        .outcomes()
                : races.outlook(position).outcomes();
    }

    private static String kind(Position position) {
        if (!position.contact()) {
            return RACES;
        }
        return (position.pips() + position.opponentPips()) / 2.0 < EARLY_PIPS ? LATE : EARLY;
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
