package org.pipwright.engine.search;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.play.RandomWalk;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

class LookaheadTest {
    private static final Model MODEL = RandomModels.of(5, 16, 8);

    private static PositionEvaluator evaluator() {
        return new NetworkEvaluator(MODEL);
    }

    private static float[] evaluate(Lookahead search, Position position, int lookahead) {
        float[] chances = new float[Outcomes.COUNT];
        search.evaluate(position.toPlanes(), 0, lookahead, chances, 0);
        return chances;
    }

    /** 15 checkers have hundreds of plays for some rolls: depth 2 unpruned only for fewer. */
    @ParameterizedTest
    @CsvSource({"15, 1, 120", "4, 1, 200", "1, 2, 80", "2, 2, 30", "3, 2, 6", "1, 3, 8"})
    void equalsTheDefinitionBitForBit(int checkers, int lookahead, int positions) {
        Lookahead search = new Lookahead(Judgement.by(evaluator()), LookaheadSettings.FULL);
        NaiveLookahead naive = new NaiveLookahead(evaluator());
        for (Position position : new RandomWalk(checkers, 11).next(positions)) {
            assertArrayEquals(
                    naive.average(position, lookahead),
                    evaluate(search, position, lookahead),
                    () -> position + " at lookahead " + lookahead);
        }
    }

    /** Choices that leave plays on the way against those that value all in full: the same play and the same chances. */
    @ParameterizedTest
    @CsvSource({"15, true, 60", "15, false, 2", "3, false, 60", "2, false, 100"})
    void pruningChangesNothing(int checkers, boolean byDefault, int positions) {
        LookaheadSettings settings = byDefault ? LookaheadSettings.DEFAULT : LookaheadSettings.FULL;
        Lookahead pruned = new Lookahead(Judgement.by(evaluator()), settings);
        Lookahead full = new Lookahead(Judgement.by(evaluator()), settings);
        PlayGenerator generator = new PlayGenerator();
        int roll = 0;
        for (Position position : new RandomWalk(checkers, 17).next(positions)) {
            int[] planes = position.toPlanes();
            Roll dice = byDefault || checkers < 15 ? Roll.all().get(roll++ % Roll.COUNT) : Roll.of(6, 5);
            int count = generator.generate(planes, 0, dice.high(), dice.low());
            float[] expected = new float[Outcomes.COUNT];
            float[] found = new float[Outcomes.COUNT];
            assertEquals(
                    full.chooseUnpruned(planes, 0, generator.results(), count, 2, expected),
                    pruned.choose(planes, 0, generator.results(), count, 2, found),
                    () -> position + " " + dice);
            assertArrayEquals(expected, found, () -> position + " " + dice);
        }
        assertTrue(pruned.evaluations() < full.evaluations(), "something was left out");
    }

    @Test
    void fullGameAtLookaheadTwoEqualsTheDefinition() {
        Position position = PositionText.parse("1@2 1@7 13@off / 1@1 1@9 13@off");
        Lookahead search = new Lookahead(Judgement.by(evaluator()), LookaheadSettings.FULL);
        assertArrayEquals(new NaiveLookahead(evaluator()).average(position, 2), evaluate(search, position, 2));
    }

    @Test
    void lookaheadZeroIsTheEvaluator() {
        Lookahead search = new Lookahead(Judgement.by(evaluator()), LookaheadSettings.DEFAULT);
        for (Position position : new RandomWalk(15, 3).next(50)) {
            float[] plain = new float[Outcomes.COUNT];
            evaluator().evaluate(position.toPlanes(), 0, plain, 0);
            assertArrayEquals(plain, evaluate(search, position, 0));
        }
    }

    @ParameterizedTest
    @CsvSource({"15, 1", "2, 2"})
    void choosesTheFirstOfTheBestPlays(int checkers, int lookahead) {
        RandomWalk walk = new RandomWalk(checkers, 17);
        Lookahead search = new Lookahead(Judgement.by(evaluator()), LookaheadSettings.FULL);
        NaiveLookahead naive = new NaiveLookahead(evaluator());
        PlayGenerator generator = new PlayGenerator();
        for (int i = 0; i < 15; i++) {
            Position position = walk.next();
            Roll roll = walk.roll();
            int count = generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
            float[] chances = new float[Outcomes.COUNT];
            int chosen = search.choose(position.toPlanes(), 0, generator.results(), count, lookahead, chances);
            List<float[]> values = naive.values(position, Plays.legal(position, roll), lookahead);
            int first = 0;
            for (int p = 1; p < values.size(); p++) {
                first = Chances.equity(values.get(p), 0) > Chances.equity(values.get(first), 0) ? p : first;
            }
            assertEquals(first, chosen);
            assertArrayEquals(values.get(first), chances);
        }
    }

    /** What the cache holds, and whether it can hold anything, changes no bit. */
    @Test
    void memoryChangesNothing() {
        Lookahead large =
                new Lookahead(Judgement.by(evaluator()), LookaheadSettings.DEFAULT, new ChanceCache(16), () -> false);
        ChanceCache tiny = new ChanceCache(1);
        Lookahead small = new Lookahead(Judgement.by(evaluator()), LookaheadSettings.DEFAULT, tiny, () -> false);
        for (Position position : new RandomWalk(15, 23).next(6)) {
            evaluate(large, position, 1);
            float[] once = evaluate(large, position, 2);
            assertArrayEquals(once, evaluate(large, position, 2));
            assertArrayEquals(once, evaluate(small, position, 2));
        }
        assertTrue(tiny.hitRate() < 0.5, "a cache of two entries cannot hit often: " + tiny.hitRate());
    }

    /** Pruning leaves out replies, so the side that replies can only do worse; by how much is for benchmarks. */
    @Test
    void pruningTheRepliesNeverHelpsTheReplier() {
        LookaheadSettings best = new LookaheadSettings(List.of(Pruning.NONE), List.of(new Pruning(0, 1)));
        Lookahead full = new Lookahead(Judgement.by(evaluator()), LookaheadSettings.FULL);
        Lookahead one = new Lookahead(Judgement.by(evaluator()), best);
        int differ = 0;
        for (Position position : new RandomWalk(3, 29).next(20)) {
            float whole = Chances.equity(evaluate(full, position, 2), 0);
            float part = Chances.equity(evaluate(one, position, 2), 0);
            assertTrue(part <= whole + 1e-6f, position + ": " + part + " is more than " + whole);
            differ += part < whole - 1e-6f ? 1 : 0;
        }
        assertTrue(differ > 5, "pruning to one reply made a difference " + differ + " times only");
    }

    @Test
    void stopsWhenTold() {
        Lookahead search =
                new Lookahead(Judgement.by(evaluator()), LookaheadSettings.DEFAULT, new ChanceCache(10), () -> true);
        assertThrows(CancellationException.class, () -> evaluate(search, Position.start(), 2));
    }

    @Test
    void refusesALookaheadOutOfRange() {
        Lookahead search = new Lookahead(Judgement.by(evaluator()), LookaheadSettings.DEFAULT);
        assertThrows(IllegalArgumentException.class, () -> evaluate(search, Position.start(), 7));
        assertThrows(IllegalArgumentException.class, () -> evaluate(search, Position.start(), -1));
    }
}
