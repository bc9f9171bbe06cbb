package org.pipwright.engine.match;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaivePlayGenerator;
import org.pipwright.engine.naive.NaiveRules;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

/** Games follow the rules from the first roll to the last, and are worth the same to both sides. */
class GameLoopTest {
    private final GameLoop loop = new GameLoop();

    /** One game as it was told to the listener: every board, with the mover's side first, and every result. */
    private static final class Record implements TurnListener {
        final List<NaiveBoard> boards = new ArrayList<>();
        final List<NaiveBoard> results = new ArrayList<>();
        final List<Roll> rolls = new ArrayList<>();

        @Override
        public void turn(int[] planes, Roll roll, PlayGenerator legal, int chosen) {
            boards.add(NaiveBoard.ofPlanes(planes, 0));
            rolls.add(roll);
            results.add(NaiveBoard.ofPlanes(legal.results(), chosen * Planes.STRIDE));
            Set<NaiveBoard> told = new HashSet<>();
            for (int i = 0; i < legal.size(); i++) {
                told.add(NaiveBoard.ofPlanes(legal.results(), i * Planes.STRIDE));
            }
            assertEquals(
                    NaivePlayGenerator.generate(boards.get(boards.size() - 1), roll.high(), roll.low())
                            .results(),
                    told);
        }
    }

    private int play(long game, Player first, Player second, TurnListener listener) {
        return loop.play(Position.start(), null, first, second, Dice.ofGame(9, game), Dice.ofGame(10, game), listener);
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void gamesFollowTheRules(boolean random) {
        Player first = random ? new RandomPlayer() : new PipLeader();
        Player second = new PipLeader();
        Set<Integer> seen = new HashSet<>();
        for (int game = 0; game < 30; game++) {
            Record record = new Record();
            int points = play(game, first, second, record);
            int turns = loop.turns();
            assertEquals(turns, record.boards.size());
            assertEquals(NaiveBoard.ofPlanes(Position.start().toPlanes(), 0), record.boards.get(0));
            for (int t = 1; t < turns; t++) {
                assertEquals(record.results.get(t - 1).swapped(), record.boards.get(t));
                assertTrue(!NaiveRules.finished(record.boards.get(t)), "a roll after the end");
            }
            NaiveBoard last = record.results.get(turns - 1);
            assertTrue(NaiveRules.allOff(last));
            int worth = NaiveRules.pointsLost(last.swapped());
            assertEquals(turns % 2 == 1 ? worth : -worth, points);
            seen.add(points);
        }
        assertTrue(seen.size() >= 3, "few different results: " + seen);
    }

    /** Both seats taken by players who choose alike: whoever sits where, the first seat's points are the same. */
    @Test
    void onePlayerMaySitOnBothSides() {
        Player one = new PipLeader();
        TurnListener nobody = (planes, roll, legal, chosen) -> {};
        int lost = 0;
        for (int game = 0; game < 60; game++) {
            int alone = play(game, one, one, nobody);
            assertEquals(play(game, one, new PipLeader(), nobody), alone);
            lost += alone < 0 ? 1 : 0;
        }
        assertTrue(lost > 10 && lost < 50, lost + " of 60 lost by the first seat");
    }

    @Test
    void sameSeedSameGame() {
        for (int game = 0; game < 20; game++) {
            Record one = new Record();
            Record two = new Record();
            int points = play(game, new RandomPlayer(), new PipLeader(), one);
            assertEquals(points, play(game, new RandomPlayer(), new PipLeader(), two));
            assertEquals(one.results, two.results);
            assertEquals(one.rolls, two.rolls);
            Record other = new Record();
            play(game + 1000, new RandomPlayer(), new PipLeader(), other);
            assertNotEquals(one.rolls, other.rolls);
        }
    }

    /** Players who break ties differently still get the same dice. */
    @Test
    void diceDoNotDependOnTies() {
        Record one = new Record();
        Record two = new Record();
        Dice tiesOfOne = Dice.ofGame(1, 1);
        Dice tiesOfTwo = Dice.ofGame(1, 2);
        loop.play(Position.start(), null, new RandomPlayer(), new RandomPlayer(), Dice.ofGame(9, 1), tiesOfOne, one);
        loop.play(Position.start(), null, new RandomPlayer(), new RandomPlayer(), Dice.ofGame(9, 1), tiesOfTwo, two);
        int both = Math.min(one.rolls.size(), two.rolls.size());
        assertEquals(one.rolls.subList(0, both), two.rolls.subList(0, both));
        assertNotEquals(one.results, two.results);
    }

    @Test
    void firstRollAndFirstPositionAreThoseGiven() {
        Position start = PositionText.parse("1@6 1@3 / 1@1 1@2 of 2");
        Record record = new Record();
        int points = loop.play(
                start,
                Roll.parse("6-3"),
                new PipLeader(),
                new PipLeader(),
                Dice.ofGame(1, 1),
                Dice.ofGame(1, 2),
                record);
        assertEquals(2, points, "both off at once, and the other side has borne off none");
        assertEquals(1, loop.turns());
        assertEquals(List.of(Roll.parse("6-3")), record.rolls);
        assertEquals(NaiveBoard.ofPlanes(start.toPlanes(), 0), record.boards.get(0));
    }

    @Test
    void secondSeatsWinIsTheFirstSeatsLoss() {
        Position start = PositionText.parse("1@24 1@23 / 2@3 of 2");
        Dice sixes = Dice.ofGame(1, 1);
        int points = loop.play(
                start,
                Roll.parse("2-1"),
                new PipLeader(),
                new PipLeader(),
                sixes,
                Dice.ofGame(1, 2),
                TurnListener.NONE);
        assertEquals(2, loop.turns());
        assertEquals(-3, points, "both of the first seat's checkers are still in the other's home");
    }
}
