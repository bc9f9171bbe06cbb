package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.evaluation.Horizon;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Lanes;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.Net;
import org.pipwright.engine.network.RandomNetworks;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.statistics.RunningMean;
import org.pipwright.training.device.DeviceAgreement;
import org.pipwright.training.device.RolloutRules;

/** Rollouts of nets with pairs: the card's arithmetic by plain loops against engine's. */
class LayeredRolloutsTest {
    private static final ResidualShape SHAPE = ResidualShape.parse("128x1");
    private static final Map<String, Net> NETS = Map.of(
            "pairs", lanes(1),
            "other pairs", lanes(3),
            "residual", ResidualNets.network(SHAPE, Weights.of(SHAPE)));

    private static Lanes lanes(long seed) {
        return new Lanes(
                RandomNetworks.of(FeatureSet.CONTACT_2, seed, 16, 8),
                RandomNetworks.of(FeatureSet.RACE_1, seed + 1, 12));
    }

    private static RolloutRules rules(String deep, String quick, int choices, int truncation) {
        return new RolloutRules(
                NETS.get(deep), NETS.get(quick), 0.3, choices, 0.2, truncation, () -> Horizon.NONE, 24, 2);
    }

    private static Trials played(LockstepRollouts rollouts, Position start, int trials) {
        Trials games = new Trials(start, trials, trials);
        rollouts.play(games);
        return games;
    }

    @ParameterizedTest
    @CsvSource({"pairs, other pairs, 3", "residual, pairs, 3", "pairs, residual, 1"})
    void everyGameComesToTheSame(String deep, String quick, int choices) {
        RolloutRules rules = rules(deep, quick, choices, 2);
        Position start = PositionText.parse("2@24 2@13 3@8 2@6 / 2@22 2@13 3@7 2@5");
        LockstepRollouts plain = new LockstepRollouts(PlainAccelerator::new, rules);
        Map<Object, Double> expected = played(new LockstepRollouts(ThreadAccelerator::new, rules), start, 12).values;
        Map<Object, Double> values = played(plain, start, 12).values;
        expected.forEach((trial, value) -> assertEquals(value, values.get(trial), 1e-4, "trial " + trial));
        DeviceAgreement agreement = plain.agreement();
        assertTrue(agreement.onDevice() && agreement.compared() > 12, agreement.toString());
        assertEquals(0, agreement.differing(), agreement.toString());
        assertEquals(0, agreement.cost());
    }

    /** Whole games, with other dice: the difference is one of dice. */
    @Test
    void theMeanIsThatOfTheProcessorsRollouts() {
        Position board = PositionText.parse("1@2 1@5 1@8 / 1@3 1@18");
        Roll roll = Roll.of(2, 1);
        List<Play> plays = Plays.legal(board, roll);
        Model model = new Model(NETS.get("pairs"), Map.of());
        RolloutSettings settings =
                RolloutSettings.DEFAULT.withTrials(1296).withTruncation(0).withSeed(3);
        RolloutReport report;
        try (Rollouts processor = new Rollouts(Knowledge.of(model)::judgement, settings, 2)) {
            report = processor.compare(board, roll, plays.subList(0, 2), soFar -> true);
        }
        LockstepRollouts plain = new LockstepRollouts(PlainAccelerator::new, rules("pairs", "pairs", 1, 0));
        for (RolloutLine line : report.lines()) {
            RunningMean mean =
                    played(plain, plays.get(line.candidate()).next(), 360).mean();
            double error = Math.hypot(mean.standardError(), line.value().standardError());
            assertEquals(line.value().mean(), -mean.mean(), 4 * error, () -> mean + " for " + line);
            assertTrue(error < 0.1, "error " + error);
        }
    }

    /** Moves of one net, chosen again by another. */
    @Test
    void choicesThatDifferAreCounted() {
        MadeMoves moves = new MadeMoves();
        RolloutRules rules = rules("pairs", "pairs", 3, 3);
        Position start = Position.start();
        played(new LockstepRollouts(ThreadAccelerator::new, rules, moves), start, 24);
        assertEquals(0, moves.compare(rules).differing());
        DeviceAgreement other = moves.compare(rules("other pairs", "other pairs", 3, 3));
        assertTrue(other.compared() > 30 && other.differing() > other.compared() / 10, other.toString());
        assertTrue(other.cost() > 0 && other.cost() < 6, other.toString());
    }
}
