package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.evaluation.Horizon;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.network.Lanes;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.network.RandomNetworks;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.training.device.DeviceSelfPlay;
import org.pipwright.training.device.SelfPlayRules;
import org.pipwright.training.device.SelfPlayedGame;

/** Games in lockstep against engine's loop, game for game. */
class LockstepSelfPlayTest {
    private static final ResidualShape SHAPE = ResidualShape.parse("128x1");
    private static final Model MODEL = new Model(ResidualNets.network(SHAPE, Weights.of(SHAPE)), Map.of());
    private static final Model PAIRS = new Model(
            new Lanes(RandomNetworks.of(FeatureSet.CONTACT_2, 3, 16, 8), RandomNetworks.of(FeatureSet.RACE_1, 4, 12)),
            Map.of());

    private static SelfPlayRules rules(Model model) {
        return new SelfPlayRules(model.net(), 5, 7);
    }

    private static List<SelfPlayedGame> inLockstep(Model model, int atOnce, int room, int games) {
        Accelerator accelerator = new PlainAccelerator(Recipe.ofGames(SHAPE, SHAPE, 1, 0));
        GameNets.add(model.net(), accelerator);
        List<SelfPlayedGame> played = new ArrayList<>();
        new LockstepSelfPlay(accelerator, rules(model), atOnce, room).play(game -> {
            played.add(game);
            return played.size() < games;
        });
        return played;
    }

    /** One after another, by the processor. */
    private static SelfPlayedGame alone(Model model, int number) {
        SelfPlayRules rules = rules(model);
        Dice dice = Dice.ofGame(rules.seed(), 2 * number);
        int first = Dice.ofGame(rules.seed(), 2 * number + 1).below(rules.every());
        NetworkEvaluator evaluator = new NetworkEvaluator(model);
        EvaluatingPlayer player = new EvaluatingPlayer(new NetworkEvaluator(model));
        List<int[]> planes = new ArrayList<>();
        List<float[]> chances = new ArrayList<>();
        List<Boolean> beginner = new ArrayList<>();
        int[] turn = {0};
        boolean[] begun = {false};
        Supplier<Roll> rolls = () -> {
            Roll roll = begun[0] ? dice.next() : dice.opening();
            begun[0] = true;
            return roll;
        };
        float[] out = new float[6];
        new GameLoop()
                .play(
                        Position.start(),
                        rolls,
                        player,
                        player,
                        dice,
                        (now, roll, legal, chosen) -> {
                            if (turn[0] % rules.every() == first) {
                                planes.add(now.clone());
                                float[] says = new float[6];
                                evaluator.evaluate(now, 0, says, 0);
                                chances.add(says);
                                beginner.add(turn[0] % 2 == 0);
                            }
                            turn[0]++;
                        },
                        Horizon.NONE,
                        out);
        int[] all = new int[Planes.STRIDE * planes.size()];
        float[] says = new float[6 * planes.size()];
        boolean[] onRoll = new boolean[planes.size()];
        for (int i = 0; i < planes.size(); i++) {
            System.arraycopy(planes.get(i), 0, all, Planes.STRIDE * i, Planes.STRIDE);
            System.arraycopy(chances.get(i), 0, says, 6 * i, 6);
            onRoll[i] = beginner.get(i);
        }
        int outcome = 0;
        while (out[outcome] == 0) {
            outcome++;
        }
        return new SelfPlayedGame(all, says, onRoll, outcome);
    }

    private static void same(SelfPlayedGame expected, SelfPlayedGame game) {
        assertArrayEquals(expected.planes(), game.planes());
        assertArrayEquals(expected.chances(), game.chances(), 1e-5f);
        assertArrayEquals(expected.beginnerOnRoll(), game.beginnerOnRoll());
        assertEquals(expected.outcome(), game.outcome());
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void theGamesAreThoseOfTheProcessorInTheirOrder(boolean pairs) {
        Model model = pairs ? PAIRS : MODEL;
        List<SelfPlayedGame> played = inLockstep(model, 8, 8 * 800, 12);
        assertEquals(12, played.size());
        for (int number = 0; number < 12; number++) {
            same(alone(model, number), played.get(number));
        }
        assertTrue(played.stream().anyMatch(game -> game.outcome() < 3), "none was won by the side that began");
        assertTrue(played.stream().anyMatch(game -> game.outcome() >= 3), "none was lost by it");
    }

    /** Games whose plays find no room wait with their dice. */
    @Test
    void tightRoomChangesNothing() {
        List<SelfPlayedGame> ample = inLockstep(MODEL, 8, 8 * 800, 6);
        List<SelfPlayedGame> tight = inLockstep(MODEL, 8, 900, 6);
        for (int number = 0; number < 6; number++) {
            same(ample.get(number), tight.get(number));
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void decisionsAreMadeAgain(boolean pairs) {
        Model model = pairs ? PAIRS : MODEL;
        int[] games = {0};
        DeviceSelfPlay played = LockstepSelfPlay.play(PlainAccelerator::new, rules(model), 20, game -> ++games[0] < 2);
        assertEquals("plain loops", played.description());
        assertTrue(played.agreement().compared() > 100, played.toString());
        assertEquals(0, played.agreement().differing());
    }

    @Test
    void aNetThatTheCardCannotAnswerForIsRefused() {
        SelfPlayRules rules = new SelfPlayRules(RandomNetworks.residual(FeatureSet.PLACES_1, 1, 64, 1), 1, 10);
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class,
                () -> LockstepSelfPlay.play(PlainAccelerator::new, rules, game -> false));
        assertTrue(refused.getMessage().contains("residual networks"), refused.getMessage());
    }
}
