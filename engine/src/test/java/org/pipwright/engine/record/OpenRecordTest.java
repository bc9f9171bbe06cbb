package org.pipwright.engine.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

/** A record written entry by entry. */
class OpenRecordTest {
    private static OpenRecord fresh(Rules rules) {
        return OpenRecord.of(new Heading(List.of("Ada", "Ben"), rules, Map.of(), List.of()));
    }

    private static Entry.Turn turn(OpenRecord open, int side, String roll, String play) {
        Roll dice = Roll.of(roll.charAt(0) - '0', roll.charAt(2) - '0');
        return new Entry.Turn(side, dice, PlayText.parse(play, open.stand().position(), dice), "");
    }

    @Test
    void aGameIsFollowed() {
        OpenRecord start = fresh(new Rules(3, false, false));
        assertFalse(start.stand().begun());
        assertTrue(start.stand().mayRoll());
        OpenRecord one = start.with(turn(start, 1, "3-1", "8/5 6/5"));
        assertEquals(0, one.stand().decides());
        assertTrue(one.stand().mayDouble());
        OpenRecord offered = one.with(new Entry.Cube(0, CubeAction.DOUBLE, ""));
        assertTrue(offered.stand().offered());
        assertFalse(offered.stand().mayRoll());
        assertEquals(1, offered.stand().decides());
        assertEquals(0, offered.stand().onRoll());
        OpenRecord taken = offered.with(new Entry.Cube(1, CubeAction.TAKE, ""));
        assertEquals(2, taken.stand().cube().value());
        assertFalse(taken.stand().mayDouble());
        assertEquals(0, taken.stand().decides());
        OpenRecord passed = offered.with(new Entry.Cube(1, CubeAction.PASS, ""));
        assertTrue(passed.stand().over());
        assertEquals(1, passed.stand().points());
        assertFalse(passed.stand().last());
        OpenRecord second = passed.withGame();
        assertEquals(2, second.stand().number());
        assertEquals(Position.start(), second.stand().position());
        assertEquals(2, ((MatchStakes) second.stand().stakes()).score().mine());
        assertEquals(offered.record(), second.back().record(), "the game about to begin goes with the entry before it");
    }

    @Test
    void whatIsForbiddenChangesNothing() {
        OpenRecord start = fresh(new Rules(0, true, false));
        assertThrows(IllegalEntryException.class, () -> start.with(new Entry.Cube(0, CubeAction.DOUBLE, "")));
        assertThrows(IllegalEntryException.class, start::withGame);
        assertEquals(0, start.turns());
        assertEquals(start.record(), start.back().record());
    }

    /** The match is won: no game follows. */
    @Test
    void aWonMatchIsOver() {
        OpenRecord start = fresh(new Rules(1, false, false));
        OpenRecord begun = start.with(turn(start, 0, "3-1", "8/5 6/5"));
        OpenRecord won = begun.with(new Entry.Resignation(1, org.pipwright.engine.rules.GameResult.SINGLE, ""));
        assertTrue(won.stand().last());
        assertThrows(IllegalEntryException.class, won::withGame);
    }

    /** Whole matches and sessions of random decisions: text says the same, and each entry can be taken back. */
    @ParameterizedTest
    @CsvSource({"1, 0, true, true", "2, 5, false, false", "3, 3, false, false"})
    void whatIsPlayedIsWritten(long seed, int length, boolean jacoby, boolean beavers) {
        Random random = new Random(seed);
        OpenRecord open = fresh(new Rules(length, jacoby, beavers));
        int games = 0;
        for (int i = 0; i < 150 && games < 3; i++) {
            OpenRecord before = open;
            open = next(open, random, seed);
            games += open.stand().over() ? 1 : 0;
            if (i % 15 == 0) {
                assertEquals(open.record(), RecordText.parse(RecordText.print(open.record())));
                assertEquals(
                        before.record().games().size() <= open.record().games().size()
                                        && open.record()
                                                .games()
                                                .get(open.record().games().size() - 1)
                                                .entries()
                                                .isEmpty()
                                ? before.back().record()
                                : before.record(),
                        open.back().record());
                assertEquals(open.stand(), OpenRecord.of(open.record()).stand());
            }
            if (open.stand().last()) {
                break;
            }
        }
        assertTrue(games > 0, "a game was finished");
    }

    private static OpenRecord next(OpenRecord open, Random random, long seed) {
        Stand stand = open.stand();
        if (stand.over()) {
            return open.withGame();
        }
        if (stand.offered()) {
            List<CubeAction> answers = new ArrayList<>(stand.actions());
            return open.with(new Entry.Cube(stand.decides(), answers.get(random.nextInt(answers.size())), ""));
        }
        if (stand.mayDouble() && random.nextInt(20) == 0) {
            return open.with(new Entry.Cube(stand.decides(), CubeAction.DOUBLE, ""));
        }
        Dice dice = Dice.ofGame(seed, random.nextInt(1 << 20));
        Roll roll = stand.begun() ? dice.next() : dice.opening();
        List<Play> legal = Plays.legal(stand.position(), roll);
        int side = stand.begun() ? stand.onRoll() : random.nextInt(2);
        return open.with(new Entry.Turn(side, roll, legal.get(random.nextInt(legal.size())), ""));
    }
}
