package org.pipwright.training.selfplay;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.Horizon;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.rules.PossibleOutcomes;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.training.learner.InitialLayers;
import org.pipwright.training.settings.SampledPositions;

/** Games of a random network against itself, looked at sample by sample. */
class SelfPlayTest {
    private static final Model MODEL = new Model(
            InitialLayers.network(FeatureSet.CONTACT_1, List.of(16), 5),
            InitialLayers.network(FeatureSet.RACE_1, List.of(16), 6),
            Map.of());

    private static SelfPlay selfPlay(double randomOpenings, boolean doublesMayOpen, int checkers) {
        return selfPlay(
                Horizon.NONE,
                new SelfPlayRules(
                        Position.start(checkers), randomOpenings, doublesMayOpen, 1_000_000, SampledPositions.ALL, 1));
    }

    private static SelfPlay selfPlay(Horizon horizon, SelfPlayRules rules) {
        return new SelfPlay(new Judgement(new NetworkEvaluator(MODEL), horizon), rules, SampleTarget.TD);
    }

    private static int points(SelfPlay play) {
        return Math.round(Math.abs(Chances.equity(play.outcome(), 0)));
    }

    private static int[] planes(Samples samples, int i) {
        return Arrays.copyOfRange(samples.planes(), i * Planes.STRIDE, (i + 1) * Planes.STRIDE);
    }

    private static float[] target(Samples samples, int i) {
        return Arrays.copyOfRange(samples.targets(), i * Outcomes.COUNT, (i + 1) * Outcomes.COUNT);
    }

    @ParameterizedTest
    @CsvSource({"0, 0, false, 15", "0.7, 0, false, 15", "1, 0.5, true, 15", "0.7, 0, false, 2", "0.5, 0, true, 3"})
    void targetsAreChancesOfPossibleOutcomes(float lambda, double randomOpenings, boolean doubles, int checkers) {
        SelfPlay play = selfPlay(randomOpenings, doubles, checkers);
        for (int game = 0; game < 60; game++) {
            Samples samples = new Samples(1);
            play.play(Dice.ofGame(7, game), lambda, samples);
            int points = points(play);
            assertTrue(points >= 1 && points <= 3);
            assertEquals(play.turns(), samples.size());
            for (int i = 0; i < samples.size(); i++) {
                float[] target = target(samples, i);
                int possible = PossibleOutcomes.of(planes(samples, i), 0);
                double sum = 0;
                for (int k = 0; k < target.length; k++) {
                    assertTrue(target[k] >= 0 && ((possible >> k & 1) != 0 || target[k] == 0));
                    sum += target[k];
                }
                assertEquals(1, sum, 1e-5);
            }
        }
    }

    /** Samples follow each other as turns of one game, from the start to the last roll. */
    @Test
    void samplesAreTheTurnsOfTheGame() {
        Samples samples = new Samples(1);
        SelfPlay play = selfPlay(0, false, 15);
        play.play(Dice.ofGame(9, 4), 1, samples);
        int points = points(play);
        assertEquals(Position.start(), Position.ofPlanes(samples.planes(), 0));

        // The same game through the loop itself.
        EvaluatingPlayer player = new EvaluatingPlayer(new NetworkEvaluator(MODEL));
        Dice dice = Dice.ofGame(9, 4);
        GameLoop loop = new GameLoop();
        int[] turn = {0};
        int signed = loop.play(
                Position.start(), dice.opening(), player, player, dice, dice, (planes, roll, legal, chosen) -> {
                    assertArrayEquals(planes, planes(samples, turn[0]++));
                });
        assertEquals(turn[0], samples.size());
        assertEquals(points, Math.abs(signed));

        // With lambda 1 every target is the result, for the side on roll.
        for (int i = 0; i < samples.size(); i++) {
            boolean winnersTurn = (samples.size() - 1 - i) % 2 == 0;
            assertEquals(1, target(samples, i)[points - 1 + (winnersTurn ? 0 : 3)]);
        }
    }

    @Test
    void sameDiceGiveTheSameGame() {
        for (int game = 0; game < 20; game++) {
            Samples first = new Samples(64);
            Samples second = new Samples(1);
            SelfPlay fresh = selfPlay(0.5, false, 15);
            SelfPlay used = selfPlay(0.5, false, 15);
            used.play(Dice.ofGame(1, 99), 0.7f, new Samples(4));
            fresh.play(Dice.ofGame(2, game), 0.7f, first);
            used.play(Dice.ofGame(2, game), 0.7f, second);
            assertArrayEquals(fresh.outcome(), used.outcome());
            assertEquals(first.size(), second.size());
            for (int i = 0; i < first.size(); i++) {
                assertArrayEquals(planes(first, i), planes(second, i));
                assertArrayEquals(target(first, i), target(second, i));
            }
        }
    }

    @Test
    void otherDiceGiveAnotherGame() {
        Samples first = new Samples(64);
        Samples second = new Samples(64);
        SelfPlay play = selfPlay(0, false, 15);
        play.play(Dice.ofGame(2, 0), 0.7f, first);
        play.play(Dice.ofGame(2, 1), 0.7f, second);
        assertNotEquals(
                Arrays.hashCode(Arrays.copyOf(first.planes(), first.size() * Planes.STRIDE)),
                Arrays.hashCode(Arrays.copyOf(second.planes(), second.size() * Planes.STRIDE)));
    }

    /** Races end at once with chances that no play would give; the side on roll then must see them in its last target. */
    @Test
    void aHorizonEndsTheGameAndItsChancesAreTheLastTarget() {
        float[] known = {0.5f, 0.2f, 0.1f, 0.1f, 0.07f, 0.03f};
        Horizon races = (planes, at, out, outAt) -> {
            boolean race = !Planes.contact(planes, at);
            if (race) {
                System.arraycopy(known, 0, out, outAt, known.length);
            }
            return race;
        };
        SelfPlay play = selfPlay(races, SelfPlayRules.plain(Position.start()));
        int ended = 0;
        for (int game = 0; game < 40; game++) {
            Samples samples = new Samples(1);
            play.play(Dice.ofGame(3, game), 0.5f, samples);
            float[] last = target(samples, samples.size() - 1);
            for (int i = 0; i < samples.size(); i++) {
                assertTrue(Planes.contact(samples.planes(), i * Planes.STRIDE));
            }
            if (last[0] != 0 && last[0] != 1) {
                ended++;
                // The horizon spoke for the side that would have rolled next.
                assertArrayEquals(new float[] {0.1f, 0.07f, 0.03f, 0.5f, 0.2f, 0.1f}, last);
                float[] begun = play.outcome();
                assertEquals(samples.size() % 2 == 1 ? 0.1f : 0.5f, begun[0]);
            }
        }
        assertTrue(ended > 20, "only " + ended + " games became races");
    }

    @Test
    void aGameThatLastsTooLongIsValuedByTheNet() {
        SelfPlayRules rules = new SelfPlayRules(Position.start(), 0, false, 7, SampledPositions.ALL, 1);
        SelfPlay play = selfPlay(Horizon.NONE, rules);
        Samples samples = new Samples(1);
        Samples whole = new Samples(1);
        play.play(Dice.ofGame(5, 1), 1, samples);
        selfPlay(0, false, 15).play(Dice.ofGame(5, 1), 1, whole);
        assertEquals(7, play.turns());
        assertEquals(7, samples.size());
        assertArrayEquals(planes(whole, 6), planes(samples, 6));
        float[] value = new float[Outcomes.COUNT];
        new NetworkEvaluator(MODEL).evaluate(planes(whole, 7), 0, value, 0);
        float[] begun = play.outcome();
        Chances.swap(begun, 0);
        assertArrayEquals(value, begun);
        assertArrayEquals(play.outcome(), target(samples, 6));
    }

    /** Those that become samples, and no others, get a target of their own in place of that of TD. */
    @Test
    void samplesGetTheTargetThatIsAskedFor() {
        SelfPlayRules rules = new SelfPlayRules(Position.start(), 0, false, 1_000_000, SampledPositions.ALL, 0.2);
        Judgement judgement = Judgement.by(new NetworkEvaluator(MODEL));
        int[] asked = {0};
        SampleTarget numbered = (planes, at, dice, out, outAt) -> out[outAt] = ++asked[0];
        Samples samples = new Samples(1);
        new SelfPlay(judgement, rules, numbered).play(Dice.ofGame(4, 1), 0, samples);
        Samples all = new Samples(1);
        selfPlay(0, false, 15).play(Dice.ofGame(4, 1), 0, all);
        assertTrue(samples.size() > 0 && samples.size() < all.size() / 2, samples.size() + " of " + all.size());
        assertEquals(samples.size(), asked[0]);
        for (int i = 0; i < samples.size(); i++) {
            assertEquals(i + 1, target(samples, i)[0]);
        }
    }

    /** Truncated after one roll, with its luck taken off, every game gives what lookahead 1 says, whatever the dice. */
    @Test
    void targetsOfRolloutsOfOneRollAreThoseOfTheSearch() {
        Lookahead search = new Lookahead(Judgement.by(new NetworkEvaluator(MODEL)), LookaheadSettings.DEFAULT);
        RolloutTarget rollouts = new RolloutTarget(Judgement.by(new NetworkEvaluator(MODEL)), 36, 1);
        for (Position position : List.of(Position.start(), Position.start(3), Position.start(2))) {
            float[] expected = new float[Outcomes.COUNT];
            search.evaluate(position.toPlanes(), 0, 1, expected, 0);
            for (int game = 0; game < 2; game++) {
                float[] chances = new float[Outcomes.COUNT];
                rollouts.write(position.toPlanes(), 0, Dice.ofGame(1, game), chances, 0);
                assertArrayEquals(expected, chances, 1e-5f);
            }
        }
    }

    @Test
    void targetsOfRolloutsTakeTheirDiceFromTheGame() {
        RolloutTarget rollouts = new RolloutTarget(Judgement.by(new NetworkEvaluator(MODEL)), 36, 4);
        float[][] chances = new float[3][Outcomes.COUNT];
        rollouts.write(Position.start().toPlanes(), 0, Dice.ofGame(1, 1), chances[0], 0);
        rollouts.write(Position.start().toPlanes(), 0, Dice.ofGame(1, 1), chances[1], 0);
        rollouts.write(Position.start().toPlanes(), 0, Dice.ofGame(1, 2), chances[2], 0);
        assertArrayEquals(chances[0], chances[1]);
        assertNotEquals(chances[0][0], chances[2][0]);
    }

    /** The same games give fewer samples: those with a choice, or every other one. */
    @Test
    void samplesAreThoseOfChoicesOrOfOneSide() {
        boolean[] begins = new boolean[2];
        int forcedTurns = 0;
        for (int game = 0; game < 20; game++) {
            List<int[]> turns = new ArrayList<>();
            List<Boolean> choice = new ArrayList<>();
            EvaluatingPlayer player = new EvaluatingPlayer(new NetworkEvaluator(MODEL));
            Dice dice = Dice.ofGame(12, game);
            new GameLoop()
                    .play(
                            Position.start(),
                            dice.opening(),
                            player,
                            player,
                            dice,
                            dice,
                            (planes, roll, legal, chosen) -> {
                                turns.add(planes.clone());
                                choice.add(legal.size() > 1);
                            });
            forcedTurns += Collections.frequency(choice, false);
            List<int[]> ofChoices = sampled(SampledPositions.CHOICES, game);
            List<int[]> expected = new ArrayList<>();
            for (int t = 0; t < turns.size(); t++) {
                if (choice.get(t)) {
                    expected.add(turns.get(t));
                }
            }
            assertArrayEquals(expected.toArray(), ofChoices.toArray());

            List<int[]> ofOneSide = sampled(SampledPositions.ONE_SIDE, game);
            int side = Arrays.equals(turns.get(0), ofOneSide.get(0)) ? 0 : 1;
            begins[side] = true;
            List<int[]> ofSide = new ArrayList<>();
            for (int t = side; t < turns.size(); t += 2) {
                ofSide.add(turns.get(t));
            }
            assertArrayEquals(ofSide.toArray(), ofOneSide.toArray());
        }
        assertTrue(forcedTurns > 20 && begins[0] && begins[1]);
    }

    private static List<int[]> sampled(SampledPositions which, int game) {
        Samples samples = new Samples(1);
        SelfPlayRules rules = new SelfPlayRules(Position.start(), 0, false, 1_000_000, which, 1);
        selfPlay(Horizon.NONE, rules).play(Dice.ofGame(12, game), 0.5f, samples);
        List<int[]> positions = new ArrayList<>();
        for (int i = 0; i < samples.size(); i++) {
            positions.add(planes(samples, i));
        }
        return positions;
    }
}
