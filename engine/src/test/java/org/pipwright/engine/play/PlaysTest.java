package org.pipwright.engine.play;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

class PlaysTest {
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 7, 15})
    void everyGeneratedResultHasAPlayWhoseStepsLeadThere(int checkers) {
        RandomWalk walk = new RandomWalk(checkers, 51);
        PlayGenerator generator = new PlayGenerator();
        for (int i = 0; i < 2000; i++) {
            Position position = walk.next();
            Roll roll = walk.roll();
            int count = generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
            List<Play> plays = Plays.legal(position, roll);
            assertEquals(count, plays.size());
            Set<String> texts = new HashSet<>();
            for (int r = 0; r < count; r++) {
                Play play = plays.get(r);
                assertEquals(Position.ofPlanes(generator.results(), r * Planes.STRIDE), play.result());
                assertEquals(play.result(), replayed(position, play), () -> position + " " + roll + ": " + play);
                assertTrue(texts.add(play.toString()), () -> position + " " + roll + " has twice " + play);
            }
        }
    }

    /** The steps on plain counts, each hit checked to be one and each other step to be none. */
    private static Position replayed(Position position, Play play) {
        int[] me = new int[Planes.PLACES];
        int[] opponent = new int[Planes.PLACES];
        for (int place = 0; place < Planes.PLACES; place++) {
            me[place] = position.count(place);
            opponent[place] = position.opponentCount(place);
        }
        for (Step step : play.steps()) {
            me[step.from()]--;
            me[step.to()]++;
            int there = step.to() == Planes.OFF ? 0 : opponent[25 - step.to()];
            assertEquals(step.hit() ? 1 : 0, there, play.toString());
            if (step.hit()) {
                opponent[25 - step.to()] = 0;
                opponent[Planes.BAR]++;
            }
        }
        return Position.of(me, opponent);
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 7, 15})
    void askingForOneResultGivesTheSamePlayAsAskingForAll(int checkers) {
        RandomWalk walk = new RandomWalk(checkers, 52);
        for (int i = 0; i < 500; i++) {
            Position position = walk.next();
            Roll roll = walk.roll();
            List<Play> plays = Plays.legal(position, roll);
            Play play = plays.get(walk.below(plays.size()));
            assertEquals(play, Plays.to(position, roll, play.result()));
            assertEquals(play, Plays.to(position, roll, play.result().toPlanes(), 0));
        }
    }

    /** Tries every order of steps, rising sources of doubles too: all that lead to one result print alike. */
    @ParameterizedTest
    @ValueSource(ints = {2, 3, 7, 15})
    void theTextDoesNotDependOnTheOrderOfTheSteps(int checkers) {
        RandomWalk walk = new RandomWalk(checkers, 53);
        for (int i = 0; i < 400; i++) {
            Position position = walk.next();
            Roll roll = walk.roll();
            Map<Position, String> texts = new HashMap<>();
            Plays.legal(position, roll).forEach(play -> texts.put(play.result(), play.toString()));
            int most = Plays.legal(position, roll).get(0).steps().size();
            everyOrder(position.toPlanes(), StepRules.dice(roll), 0, new Step[most], texts);
        }
    }

    private static void everyOrder(int[] planes, int[] dice, int used, Step[] steps, Map<Position, String> texts) {
        int depth = Integer.bitCount(used);
        if (depth == steps.length) {
            String known = texts.get(Position.ofPlanes(planes, 0));
            if (known != null) {
                assertEquals(known, PlayPrinter.print(List.of(steps)));
            }
            return;
        }
        for (int d = 0; d < dice.length; d++) {
            boolean twin = d > 0 && dice[d] == dice[d - 1] && (used >> d - 1 & 1) == 0;
            for (int from = 1; from <= Planes.BAR && (used >> d & 1) == 0 && !twin; from++) {
                if (StepRules.obstacle(planes, from, dice[d]) == StepRules.Obstacle.NONE) {
                    int[] after = planes.clone();
                    int to = StepRules.target(from, dice[d]);
                    steps[depth] = new Step(from, to, StepRules.move(after, from, to));
                    everyOrder(after, dice, used | 1 << d, steps, texts);
                }
            }
        }
    }

    @Test
    void nextIsTheOpponentsView() {
        Play play = PlayText.parse("8/5 6/5", Position.start(), Roll.of(3, 1));
        assertEquals(PositionText.parse("2@5 4@6 2@8 5@13 2@24 / 5@6 3@8 5@13 2@24"), play.result());
        assertEquals(play.result().swapped(), play.next());
        assertEquals(List.of(new Step(8, 5, false), new Step(6, 5, false)), play.steps());
    }

    @Test
    void whatNoPlayLeadsToIsRefused() {
        Position start = Position.start();
        assertThrows(IllegalArgumentException.class, () -> Plays.to(start, Roll.of(3, 1), start));
        Position over = PositionText.parse("off / 1@6");
        assertThrows(IllegalArgumentException.class, () -> Plays.legal(over, Roll.of(3, 1)));
        assertThrows(IllegalArgumentException.class, () -> new Step(5, 5, false));
        assertThrows(IllegalArgumentException.class, () -> new Step(26, 5, false));
        assertThrows(IllegalArgumentException.class, () -> new Step(3, 0, true));
    }

    /** Written in two ways, a play counts once, and the first way stays. */
    @Test
    void playsThatLeadToOnePositionCountOnce() {
        Position start = Position.start();
        Roll roll = Roll.of(3, 1);
        Play first = PlayText.parse("8/5 6/5", start, roll);
        Play other = PlayText.parse("24/20", start, roll);
        assertEquals(List.of(first, other), Plays.distinct(start, roll, List.of(first, other, first)));
    }

    /** A generator marks what it has seen with a number that grows with each call and begins anew after some 100,000. */
    @Test
    void aGeneratorGivesTheSameAfterAnyNumberOfCalls() {
        int[] start = Position.start().toPlanes();
        PlayGenerator generator = new PlayGenerator();
        assertEquals(16, generator.generate(start, 0, 3, 1));
        for (int i = 0; i < 110_000; i++) {
            assertEquals(16, generator.generate(start, 0, 3, 1));
        }
        assertEquals(16, generator.size());
    }

    /** The planes of each play's result, one after the other. */
    @Test
    void resultsOfPlaysStandInOneArray() {
        List<Play> plays = Plays.legal(Position.start(), Roll.of(3, 1)).subList(0, 3);
        int[] results = Plays.results(plays);
        assertEquals(3 * Planes.STRIDE, results.length);
        for (int i = 0; i < plays.size(); i++) {
            assertEquals(plays.get(i).result(), Position.ofPlanes(results, i * Planes.STRIDE));
        }
        assertNotEquals(plays.get(0), plays.get(1));
    }
}
