package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.roll.Roll;

/** All threads against plain loops: learning, lookahead, answers. */
class ThreadAcceleratorTest {
    private static final int LESSONS = 300;

    private static Recipe recipe(String deep, int games) {
        return Recipe.of(CardPreset.parse("minutes = 1\ndeep = " + deep + "\nquick = 128x1\ngames = " + games
                + "\nkeep.margin = 0.03\nbatch = 64\nmemory = 1000\nclip = 0.5\naverage = 0.9\n"));
    }

    private static void addNets(Accelerator machine, Recipe recipe) {
        recipe.shapes().forEach(shape -> machine.add(shape, Weights.of(shape)));
    }

    private static LessonList lessons() {
        LessonList list = new LessonList();
        SplittableRandom random = new SplittableRandom(8);
        int[] planes = RandomPositions.of(LESSONS, 17);
        for (int i = 0; i < LESSONS; i++) {
            float[] target = new float[6];
            target[0] = 0.3f + 0.4f * (float) random.nextDouble();
            target[3] = 1 - target[0];
            list.add(planes, 8 * i, target, 0);
        }
        return list;
    }

    @ParameterizedTest
    @ValueSource(strings = {"128x1", "256x2"})
    void learnsAsPlainLoopsDo(String deep) {
        Recipe recipe = recipe(deep, 1);
        PlainAccelerator plain = new PlainAccelerator(recipe);
        ThreadAccelerator threads = new ThreadAccelerator(recipe);
        for (Accelerator machine : List.of(plain, threads)) {
            addNets(machine, recipe);
            machine.remember(lessons());
            for (int step = 0; step < 3; step++) {
                machine.learn(step, 0.001f, List.of(Recipe.DEEP));
            }
        }
        NetState expected = plain.state(Recipe.DEEP);
        NetState found = threads.state(Recipe.DEEP);
        assertEquals(3, found.steps());
        close(expected.firstMoments(), found.firstMoments(), 1e-4);
        close(expected.secondMoments(), found.secondMoments(), 1e-4);
        close(expected.average(), found.average(), 1e-4);
        // A step of Adam hardly depends on a gradient's size, so that of a gradient near 0 is nearly anything.
        close(expected.weights(), found.weights(), 1e-3);
        assertArrayEquals(plain.losses(Recipe.DEEP), threads.losses(Recipe.DEEP), 1e-5);
    }

    /** The length of the difference is small beside that of what is expected. */
    private static void close(float[] expected, float[] found, double tolerance) {
        double difference = 0;
        double length = 0;
        for (int i = 0; i < expected.length; i++) {
            difference += Math.pow(expected[i] - found[i], 2);
            length += Math.pow(expected[i], 2);
        }
        assertTrue(length > 0, "nothing is expected");
        assertTrue(
                difference <= tolerance * tolerance * length,
                Math.sqrt(difference / length) + " of the length instead of " + tolerance);
    }

    /** A lane's answers are those of plain loops, a roll's kept results in the same order. */
    @Test
    void looksAheadAsPlainLoopsDo() {
        Recipe recipe = recipe("128x2", 12);
        PlainAccelerator plain = new PlainAccelerator(recipe);
        ThreadAccelerator threads = new ThreadAccelerator(recipe);
        addNets(plain, recipe);
        addNets(threads, recipe);
        LaneJudge one = lane(plain);
        LaneJudge other = lane(threads);
        assertEquals(one.kept(), other.kept());
        for (int i = 0; i < 12; i++) {
            LaneAnswer expected = LaneAnswer.of(one.plays(), i);
            LaneAnswer found = LaneAnswer.of(other.plays(), i);
            assertEquals(expected.expected(), found.expected(), 1e-5);
            assertEquals(expected.best(), found.best(), 1e-5);
            assertArrayEquals(expected.results(), found.results());
            assertArrayEquals(expected.equities(), found.equities(), 1e-5);
        }
        for (LaneJudge judge : List.of(one, other)) {
            judge.teach(5, 0.001f, List.of(Recipe.QUICK));
        }
        close(
                plain.state(Recipe.QUICK).firstMoments(),
                threads.state(Recipe.QUICK).firstMoments(),
                1e-4);
    }

    private static LaneJudge lane(Accelerator machine) {
        LaneJudge lane = machine.lane();
        int[] planes = RandomPositions.of(12, 5);
        SplittableRandom random = new SplittableRandom(3);
        for (int i = 0; i < 12; i++) {
            lane.plays().rolls.putInt(4 * i, random.nextInt(Roll.COUNT));
        }
        lane.plays().generate(planes);
        lane.upload();
        lane.judge();
        return lane;
    }

    @Test
    void answersAsPlainLoopsDo() {
        Recipe recipe = recipe("128x1", 1);
        PlainAccelerator plain = new PlainAccelerator(recipe);
        ThreadAccelerator threads = new ThreadAccelerator(recipe);
        addNets(plain, recipe);
        addNets(threads, recipe);
        int[] planes = RandomPositions.of(150, 2);
        float[] expected = new float[6 * 150];
        float[] found = new float[6 * 150];
        plain.ask(Recipe.DEEP, planes, 150, expected);
        threads.ask(Recipe.DEEP, planes, 150, found);
        assertArrayEquals(expected, found, 1e-6f);
        ResultJudge one = plain.results(150);
        ResultJudge other = threads.results(150);
        one.results().put(0, planes);
        other.results().put(0, planes);
        one.judge(Recipe.DEEP, 150);
        other.judge(Recipe.DEEP, 150);
        for (int i = 0; i < 150; i++) {
            assertEquals(one.equity(i), other.equity(i), 1e-5);
        }
    }

    /** States are copies: what is learned later does not change them, and a network can be put back to one. */
    @Test
    void goesBackToAState() {
        Recipe recipe = recipe("128x1", 1);
        ThreadAccelerator threads = new ThreadAccelerator(recipe);
        addNets(threads, recipe);
        threads.remember(lessons());
        threads.learn(1, 0.001f, List.of(Recipe.DEEP));
        NetState before = threads.state(Recipe.DEEP);
        threads.learn(2, 0.001f, List.of(Recipe.DEEP));
        NetState after = threads.state(Recipe.DEEP);
        threads.restore(Recipe.DEEP, before);
        assertEquals(1, threads.steps(Recipe.DEEP));
        threads.learn(2, 0.001f, List.of(Recipe.DEEP));
        assertArrayEquals(after.weights(), threads.state(Recipe.DEEP).weights());
    }

    /** The newest lessons replace the oldest. */
    @Test
    void memoryIsLimited() {
        Recipe recipe = recipe("128x1", 1);
        ThreadAccelerator threads = new ThreadAccelerator(recipe);
        for (int k = 0; k < 4; k++) {
            threads.remember(lessons());
        }
        assertEquals(1000, threads.remembered());
    }
}
