package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.evaluation.Horizon;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Net;
import org.pipwright.engine.network.RandomNetworks;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.statistics.RunningMean;
import org.pipwright.training.device.RolloutRules;

/** Rollouts in lockstep against what they estimate, computed by recursion over all rolls. */
class LockstepRolloutsTest {
    private static final double KEEP = 0.3;
    private static final int PLACES = 24;

    private static final ResidualShape DEEP = ResidualShape.parse("128x2");
    private static final ResidualShape QUICK = ResidualShape.parse("128x1");
    private static final Net DEEP_NET = ResidualNets.network(DEEP, Weights.of(DEEP));
    private static final Net QUICK_NET = ResidualNets.network(QUICK, Weights.of(QUICK));

    /** With the rounded weights. */
    private static final PlainNet DEEP_TWIN = new PlainNet(DEEP, ResidualNets.weights(DEEP_NET));

    private static final PlainLookahead TWIN =
            new PlainLookahead(DEEP_TWIN, new PlainNet(QUICK, ResidualNets.weights(QUICK_NET)));

    private final Map<String, Double> lookaheads = new HashMap<>();
    private final Map<String, Double> values = new HashMap<>();

    private static LockstepRollouts rollouts(int choices, int truncation, Horizon horizon) {
        return rollouts(choices, truncation, horizon, 0);
    }

    /** With room for so many results a lane. */
    private static LockstepRollouts rollouts(int choices, int truncation, Horizon horizon, int room) {
        return new LockstepRollouts(
                recipe -> new PlainAccelerator(recipe, room),
                new RolloutRules(DEEP_NET, QUICK_NET, KEEP, choices, 10, truncation, () -> horizon, PLACES, 2));
    }

    private static Trials played(LockstepRollouts rollouts, Position start, int trials, int atOnce) {
        Trials games = new Trials(start, trials, atOnce);
        rollouts.play(games);
        assertEquals(trials, games.values.size());
        return games;
    }

    /** Of the side on roll: that of a finished game, or by lookahead. */
    private double lookahead(int[] planes) {
        return finished(planes)
                ? -GameResult.of(planes, 0).points()
                : lookaheads.computeIfAbsent(
                        Arrays.toString(planes),
                        key -> PlainNet.equity(TWIN.expected(planes, 0, KEEP, PlaysBatch.SLOTS)));
    }

    /** Whether the side that is not on roll has borne off all. */
    private static boolean finished(int[] planes) {
        return (Planes.occupied(planes, Planes.SIDE) & Planes.ON_BOARD) == 0;
    }

    /** The position of the other side after the result that is chosen: by lookahead, or by the deep net alone. */
    private int[] chosen(int[] planes, Roll roll, int choices) {
        PlayGenerator plays = new PlayGenerator();
        int count = plays.generate(planes, 0, roll.high(), roll.low());
        int[] best = null;
        double least = Double.POSITIVE_INFINITY;
        for (int k : TWIN.keep(plays.results(), count, KEEP, PlaysBatch.SLOTS)) {
            int[] next = new int[8];
            Planes.copySwapped(plays.results(), 8 * k, next, 0);
            double equity =
                    choices > 1 || finished(next) ? lookahead(next) : PlainNet.equity(DEEP_TWIN.chances(next, 0));
            if (equity < least) {
                least = equity;
                best = next;
            }
        }
        return best;
    }

    /** What games come to, all rolls tried, so many of them before lookahead is asked. */
    private double exact(int[] planes, int choices, int turns) {
        if (finished(planes) || turns == 0) {
            return lookahead(planes);
        }
        String key = turns + Arrays.toString(planes);
        if (!values.containsKey(key)) {
            double sum = 0;
            for (Roll roll : Roll.all()) {
                sum -= roll.probability() * exact(chosen(planes, roll, choices), choices, turns - 1);
            }
            values.put(key, sum);
        }
        return values.get(key);
    }

    /** In 36 trials every first throw comes once, and what follows it is known without more dice. */
    @ParameterizedTest
    @ValueSource(ints = {1, PlaysBatch.SLOTS})
    void oneRollHasTheMeanOverAllRolls(int choices) {
        Position start = PositionText.parse("2@24 1@6 / 2@24 1@6");
        Trials games = played(rollouts(choices, 1, Horizon.NONE), start, 36, 36);
        assertEquals(exact(start.toPlanes(), choices, 1), games.mean().mean(), 1e-4);
        assertTrue(games.mean().variance() > 1e-6, "trials differ");
    }

    /** Played to the end, with the luck as nets that know nothing see it. */
    @ParameterizedTest
    @ValueSource(ints = {1, PlaysBatch.SLOTS})
    void wholeGamesHaveTheirTrueMean(int choices) {
        Position start = PositionText.parse("1@2 1@5 / 1@3 1@4");
        RunningMean mean =
                played(rollouts(choices, 0, Horizon.NONE), start, 1296, 300).mean();
        double exact = exact(start.toPlanes(), choices, Integer.MAX_VALUE);
        assertEquals(exact, mean.mean(), 4 * mean.standardError(), () -> mean.toString());
        assertTrue(mean.standardError() < 0.03, mean.toString());
    }

    /** Races are not truncated; a horizon that knows every race ends them, here at half a point for the side on roll. */
    @Test
    void knownPositionsEndGames() {
        Horizon races = (planes, at, out, outAt) -> {
            boolean known = !Planes.contact(planes, at);
            if (known) {
                Arrays.fill(out, outAt, outAt + 6, 0);
                out[outAt] = 0.75f;
                out[outAt + 3] = 0.25f;
            }
            return known;
        };
        Trials race = played(rollouts(2, 1, races), PositionText.parse("5@6 / 5@5"), 3, 3);
        assertEquals(Map.of(0, 0.5, 1, 0.5, 2, 0.5), race.values);
    }

    @Test
    void positionsAreValuedByLookahead() {
        List<Position> positions = new ArrayList<>();
        int[] planes = RandomPositions.of(PLACES + 5, 4);
        for (int i = 0; i < PLACES + 5; i++) {
            positions.add(Position.ofPlanes(planes, 8 * i));
        }
        double[] equities = rollouts(1, 1, Horizon.NONE).lookahead(positions);
        for (int i = 0; i < equities.length; i += 7) {
            assertEquals(lookahead(positions.get(i).toPlanes()), equities[i], 1e-4);
        }
    }

    /** Many plays: each position has more than twice the usual number of results, and the room is for two of them. */
    @Test
    void tightRoomChangesNothing() {
        Position start =
                PositionText.parse("1@24 1@22 1@20 1@18 1@17 1@15 1@14 1@13 1@11 1@10 1@9 1@8 1@7 1@6 1@4 / 2@23 13@2");
        PlaysBatch batch = new PlaysBatch(1, PlainLane::memory);
        batch.generate(start.toPlanes());
        assertTrue(batch.size() > 800, "results " + batch.size());
        LockstepRollouts tight = rollouts(2, 1, Horizon.NONE, 2 * batch.size());
        Map<Object, Double> expected = played(rollouts(2, 1, Horizon.NONE), start, 12, 12).values;
        assertEquals(expected, played(tight, start, 12, 12).values);
        List<Position> positions = List.of(start, Position.start(), start, start, Position.start());
        double[] equities = tight.lookahead(positions);
        for (int i = 0; i < equities.length; i++) {
            assertEquals(lookahead(positions.get(i).toPlanes()), equities[i], 1e-4);
        }
    }

    @Test
    void netsOfOtherShapesAreRefused() {
        Net narrow = RandomNetworks.residual(FeatureSet.PLACES_1, 1, 64, 1);
        RolloutRules rules = new RolloutRules(narrow, QUICK_NET, KEEP, 1, 10, 0, () -> Horizon.NONE, 1, 1);
        IllegalArgumentException e =
                assertThrows(IllegalArgumentException.class, () -> new LockstepRollouts(PlainAccelerator::new, rules));
        assertTrue(e.getMessage().startsWith("a card answers for residual networks on places-1"), e.getMessage());
    }

    /** What fails in a lane is told. */
    @Test
    void failuresAreTold() {
        LockstepRollouts rollouts = rollouts(1, 1, (planes, at, out, outAt) -> {
            throw new IllegalStateException("no horizon");
        });
        Position start = Position.start();
        IllegalStateException e =
                assertThrows(IllegalStateException.class, () -> rollouts.play(new Trials(start, 9, 9)));
        assertEquals("a lane of rollouts failed: no horizon", e.getMessage());
    }
}
