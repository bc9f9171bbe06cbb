package org.pipwright.bench.explain;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.bench.games.SelfGames;
import org.pipwright.bench.games.SelfPlayer;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.explain.PlayFacts;
import org.pipwright.engine.explain.Stage;
import org.pipwright.engine.explain.Trait;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

/** One game of a net with itself, in some turns of which the best play is compared with a few others. */
record TraitPairs(Model model) implements SelfGames.Game<List<TraitPairs.Pair>> {
    /** Turns looked at: one of so many, so that neighbours resemble each other less. */
    private static final int EVERY = 3;

    private static final int OTHERS = 3;

    /** Worse plays teach nothing about those a player hesitates between. */
    private static final float CLOSE = 0.4f;

    /** Two plays of a roll: the stage, the differences of their traits times the signs, and of their equities. */
    record Pair(Stage stage, double[] traits, double equity) {}

    @Override
    public List<Pair> play(SelfPlayer player, Dice dice, Dice choices) {
        List<Pair> pairs = new ArrayList<>();
        PositionEvaluator evaluator = new NetworkEvaluator(model);
        player.play(
                dice,
                (planes, roll, legal, chosen) -> {
                    if (legal.size() > 1 && choices.next().index() % EVERY == 0) {
                        turn(evaluator, planes, roll, legal, choices, pairs);
                    }
                },
                new float[Outcomes.COUNT]);
        return pairs;
    }

    private static void turn(
            PositionEvaluator evaluator, int[] planes, Roll roll, PlayGenerator legal, Dice choices, List<Pair> pairs) {
        int count = legal.size();
        float[] chances = new float[count * Outcomes.COUNT];
        evaluator.evaluateResults(planes, 0, legal.results(), count, chances);
        int best = 0;
        for (int i = 1; i < count; i++) {
            best = equity(chances, i) > equity(chances, best) ? i : best;
        }
        Position position = Position.ofPlanes(planes, 0);
        Stage stage = Stage.of(position);
        PlayFacts facts = null;
        for (int n = 0; n < OTHERS; n++) {
            int other = (choices.next().index() * Roll.COUNT + choices.next().index()) % count;
            double loss = equity(chances, best) - equity(chances, other);
            if (other != best && loss < CLOSE) {
                facts = facts == null ? facts(position, roll, legal, best) : facts;
                pairs.add(new Pair(stage, differences(stage, facts, facts(position, roll, legal, other)), loss));
            }
        }
    }

    private static float equity(float[] chances, int i) {
        return Chances.equity(chances, i * Outcomes.COUNT);
    }

    private static PlayFacts facts(Position position, Roll roll, PlayGenerator legal, int i) {
        return PlayFacts.of(position, Plays.to(position, roll, legal.results(), i * Planes.STRIDE));
    }

    private static double[] differences(Stage stage, PlayFacts best, PlayFacts other) {
        double[] differences = new double[Trait.values().length];
        for (Trait trait : Trait.values()) {
            differences[trait.ordinal()] = trait.counts(stage) ? trait.sign() * (trait.of(best) - trait.of(other)) : 0;
        }
        return differences;
    }
}
