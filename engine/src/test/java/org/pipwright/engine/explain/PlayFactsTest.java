package org.pipwright.engine.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaiveRules;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.regime.Source;
import org.pipwright.engine.roll.Roll;

class PlayFactsTest {
    private static PlayFacts facts(String position, String roll, String play) {
        Position from = PositionText.parse(position);
        return PlayFacts.of(from, PlayText.parse(play, from, Roll.parse(roll)));
    }

    /** Against counts by definition, for random plays from boards of every regime. */
    @ParameterizedTest
    @EnumSource(Source.class)
    void factsByTheirDefinitions(Source source) {
        SplittableRandom random = new SplittableRandom(91 + source.ordinal());
        for (int n = 0; n < 60; n++) {
            NaiveBoard before = source.sample(random);
            Position position = Position.ofPlanes(before.toPlanes(), 0);
            Roll roll = Roll.all().get(random.nextInt(Roll.COUNT));
            List<Play> plays = Plays.legal(position, roll);
            Play play = plays.get(random.nextInt(plays.size()));
            NaiveBoard after = NaiveBoard.ofPlanes(play.result().toPlanes(), 0);
            PlayFacts facts = PlayFacts.of(position, play);
            String where = position + " " + roll + " " + play;
            assertEquals(NaiveFacts.heldOnlyOn(after, before), facts.made(), where);
            assertEquals(NaiveFacts.heldOnlyOn(before, after), facts.broken(), where);
            assertEquals(after.theirs(25) - before.theirs(25), facts.hits(), where);
            assertEquals(after.mine(0) - before.mine(0), facts.borneOff(), where);
            assertEquals(NaiveRules.pips(after.swapped()) - NaiveRules.pips(before.swapped()), facts.pipsTaken());
            assertEquals(
                    NaiveRules.pips(after.swapped()) - NaiveRules.pips(after),
                    facts.after().lead());
            assertEquals(NaiveFacts.exposure(after), facts.exposure(), where);
            assertEquals(NaiveRules.contact(after) ? NaiveFacts.newPoints(after) : 0, facts.newPoints(), where);
            assertEquals(NaiveFacts.toHome(after), facts.toHome(), where);
            assertEquals(NaiveFacts.prime(after), facts.after().prime(), where);
            assertEquals(NaiveFacts.prime(after.swapped()), facts.after().theirPrime(), where);
            assertEquals(NaiveFacts.prime(before), facts.before().prime(), where);
        }
    }

    /** A lone blot 5, 6 and 1 pips away from the hitters: 15, 17 and 11 of 36 (common practice, checked by counting). */
    @ParameterizedTest
    @CsvSource({"1@9, 9/6, 6, 15", "1@10, 10/7, 7, 17", "1@5, 5/2, 2, 11"})
    void shotsAtALoneBlot(String mine, String play, int point, int shots) {
        PlayFacts facts = facts(mine + " / 2@24 of 2", "2-1", play);
        assertEquals(
                new Exposure(List.of(new Blot(point, shots)), shots, shots, 0, shots * (25 - point) / 36.0),
                facts.exposure());
    }

    @Test
    void twoBlotsBecomeAPoint() {
        PlayFacts facts = facts("1@11 1@10 / 2@24 of 2", "2-1", "11/9 10/9");
        assertEquals(List.of(9), facts.made());
        assertEquals(new Exposure(List.of(), 0, 0, 0, 0), facts.exposure());
    }

    /** Against five made points one of eleven rolls with a given number enters; the other 25 move nothing. */
    @Test
    void aCheckerOnTheBarMayHaveToWait() {
        PlayFacts facts = facts("3@6 3@5 3@4 2@3 2@2 1@8 1@7 / 1@bar 14@6", "1-1", "8/7 7/6 6/5(2)");
        assertEquals(25, facts.exposure().idle());
    }

    @Test
    void theOpeningPlayOfSixTwo() {
        PlayFacts facts = facts("start", "6-2", "24/18 13/11");
        assertEquals(List.of(), facts.made());
        assertEquals(List.of(24), facts.broken());
        assertEquals(
                List.of(11, 18, 24),
                facts.exposure().blots().stream().map(Blot::point).toList());
        assertEquals(8, facts.after().lead());
    }

    /** A split 24 point is hit as often as a blot that has come to 18, and each time for a seventh of the pips. */
    @Test
    void aHitCostsWhatTheCheckerHasCome() {
        assertEquals(1, new Blot(24, 24).pips());
        assertEquals(7, new Blot(18, 24).pips());
        Exposure split = facts("start", "2-1", "24/23 13/11").exposure();
        Exposure advanced = facts("start", "6-2", "24/18 13/11").exposure();
        assertTrue(split.shots() > 30 && advanced.shots() > 30);
        // Hardly any roll hits what has come out; the rest would hit deep in the opponent's own home.
        assertTrue(split.costly() < 6 && advanced.costly() > 20, split.costly() + " " + advanced.costly());
        assertTrue(2 * split.risk() < advanced.risk(), split.risk() + " and " + advanced.risk());
    }

    @Test
    void aPrimeHoldsWhatIsBehindIt() {
        Position position = PositionText.parse("2@4 2@5 2@6 2@7 2@8 1@9 / 1@bar 2@23 8@6");
        Prime prime = BoardFacts.of(position).prime();
        assertEquals(new Prime(5, 4, 3), prime);
        Position passed = PositionText.parse("2@4 2@5 2@6 2@7 2@8 1@9 / 3@12 8@6");
        assertEquals(Prime.NONE, BoardFacts.of(passed).prime());
    }

    @Test
    void goodPoints() {
        List<Integer> good =
                IntStream.rangeClosed(1, 24).filter(PlayFacts::good).boxed().toList();
        assertEquals(List.of(3, 4, 5, 6, 7, 18, 19, 20, 21, 22), good);
    }

    @Test
    void anAnchorIsInTheOpponentsHome() {
        assertTrue(PlayFacts.anchor(19) && PlayFacts.anchor(24));
        assertEquals(false, PlayFacts.anchor(18));
        assertEquals(Planes.BAR, 25);
    }
}
