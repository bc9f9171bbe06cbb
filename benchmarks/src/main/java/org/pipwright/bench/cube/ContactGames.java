package org.pipwright.bench.cube;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.rollout.Start;

/**
 * Positions with contact from a net's games, played out for money (no Jacoby rule) with each cube by the net without
 * lookahead, games to their end and luck taken off; their chances by as many games without the cube, so that the errors of
 * the net's own are none of the cube model's. Equally many for each range of pips, of which late ones are rare.
 */
final class ContactGames implements AutoCloseable {
    private static final MoneyStakes STAKES = new MoneyStakes(false, false);

    private static final List<CubeState> CUBES =
            List.of(CubeState.START, new CubeState(2, CubeOwner.ME), new CubeState(2, CubeOwner.THEM));

    /** Mean pip counts at which ranges begin. */
    private static final int[] RANGES = {0, 60, 80, 100, 120, 140};

    private final DrawnPositions positions;
    private final Rollouts rollouts;

    ContactGames(Knowledge knowledge, long seed, int trials, int threads) {
        positions = new DrawnPositions(knowledge.judgement().evaluator(), seed);
        rollouts = new Rollouts(
                knowledge::judgement,
                knowledge::terms,
                RolloutSettings.DEFAULT.withTrials(trials).withSeed(seed),
                threads);
    }

    /** A range of pips and its positions. */
    record Range(String name, List<CubeKnown> positions) {}

    List<Range> of(int each) {
        List<Range> ranges = new ArrayList<>();
        for (int i = 0; i < RANGES.length; i++) {
            String to = i + 1 < RANGES.length ? " to " + RANGES[i + 1] : " and more";
            ranges.add(new Range(RANGES[i] + to + " pips", new ArrayList<>()));
        }
        while (ranges.stream().anyMatch(range -> range.positions.size() < each)) {
            Position position = positions.next();
            List<CubeKnown> range = ranges.get(range(position)).positions;
            if (position.contact() && range.size() < each) {
                Outcomes outcomes = rollouts.odds(position, WorkFile.NONE, RolloutListener.NONE)
                        .of(0)
                        .outcomes();
                if (CubeFit.counts(outcomes.win())) {
                    range.add(CubeKnown.of(position.toPlanes(), known(position, outcomes)));
                }
            }
        }
        return ranges;
    }

    private static int range(Position position) {
        double pips = (position.pips() + position.opponentPips()) / 2.0;
        int range = RANGES.length - 1;
        while (pips < RANGES[range]) {
            range--;
        }
        return range;
    }

    private CubeFit.Known known(Position position, Outcomes outcomes) {
        List<Start> starts =
                CUBES.stream().map(cube -> Start.rolling(position, cube)).collect(Collectors.toList());
        RolloutReport report = rollouts.compare(starts, STAKES, 1, WorkFile.NONE, RolloutListener.NONE);
        double centred = report.of(0).value().mean();
        double owned = report.of(1).value().mean() / 2;
        double take = report.of(2).value().mean();
        return new CubeFit.Known(
                GammonShares.of(outcomes),
                outcomes.win(),
                new CubeValues(true, false, centred, take, 1, take),
                new CubeValues(true, false, owned, take, 1, take));
    }

    @Override
    public void close() {
        rollouts.close();
    }
}
