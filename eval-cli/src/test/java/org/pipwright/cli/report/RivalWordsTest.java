package org.pipwright.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.explain.ExplainedPlay;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.explain.Motive;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.models.ModelCatalog;

/** How two plays differ, in words that are true as they stand. Rolls that hit were counted by hand. */
class RivalWordsTest {
    private static Judge judge;

    @BeforeAll
    static void open() {
        judge = new Judge(Knowledge.of(ModelCatalog.shipped().load("fifth")), 1);
    }

    @AfterAll
    static void close() {
        judge.close();
    }

    /** The facts of two plays, whatever the net thinks of them. */
    private static Explanation explained(String from, String dice, String better, String weaker) {
        Position position = PositionText.parse(from);
        Roll roll = Roll.parse(dice);
        Play first = PlayText.parse(better, position, roll);
        Play second = PlayText.parse(weaker, position, roll);
        List<PlayVerdict> plays = judge.ask(
                        Question.of(position, roll).only(List.of(first, second)), Effort.STATIC.withRaces(false))
                .plays();
        int at = plays.get(0).play().result().equals(first.result()) ? 0 : 1;
        return Explanation.of(position, List.of(plays.get(at), plays.get(1 - at)), judge, 0);
    }

    private static String clause(Explanation of, Motive motive, boolean against) {
        return new MotiveWords(of.best(), of.rivals().get(0))
                .clause(motive, against)
                .orElse("");
    }

    private static String said(Explanation of) {
        return String.join("\n", RivalWords.sentences(of.best(), of.rivals().get(0), of.gammons()));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // After 24/13 the blot on the 24 point is hit by 22 rolls, which "none" must not deny.
                "SHOTS | start | 6-5 | 24/13 | 13/2 | the opponent hits with 11 of its 36 rolls (a blot on the 2 point; cheap"
                        + " hits on its 1 to 3 points left out) instead of none",
                // All but 1-1, which the anchor on the 22 point stops, hit the blots of the one that was broken: 1 and
                // 2 pips.
                "SHOTS | 2@24 2@22 2@6 3@5 3@4 3@3 / 3@9 3@8 2@7 3@6 2@5 2@4 | 4-1 | 5/1 3/2 | 24/23 6/2 | the opponent hits"
                        + " with 35 of its 36 rolls (blots on the 24 and 23 points) instead of none",
                "PRIME | start | 6-1 | 13/7 8/7 | 13/6 | it has no points in a row in front of the opponent's checkers instead of"
                        + " 3",
                "POINT | 1@4 2@5 4@6 3@8 3@13 2@24 / 4@6 4@8 5@13 1@22 1@bar | 5-1 | 8/3* 4/3 | 13/8 6/5 | it does not hit and"
                        + " make the 3 point",
                "POINT | 1@4 2@5 4@6 3@8 3@13 2@24 / 4@6 4@8 5@13 1@22 1@bar | 5-1 | 8/3* 4/3 | 8/3* 6/5 | it does not make"
                        + " the 3 point",
                "OFF | 2@2 1@4 3@6 / 2@4 3@5 5@6 | 4-2 | 4/off 2/off | 6/2 4/2 | it bears no checker off instead of 2",
                "OFF | 3@3 2@4 3@5 2@6 / 3@2 3@4 4@6 | 2-1 | 3/off | 6/4 6/5 | it bears no checker off",
                "SPREAD | start | 4-3 | 24/20 13/10 | 13/10 6/2 | it has 1 checker instead of none buried on its 1 and 2"
                        + " points",
                "BUILDERS | start | 6-2 | 24/18 13/11 | 24/16 | 14 of its own next 36 rolls instead of 26 make another good"
                        + " point (3 to 7, 18 to 22) if it is left alone",
            })
    void whatItLacks(Motive motive, String from, String roll, String better, String weaker, String clause) {
        assertEquals(clause, clause(explained(from, roll, better, weaker), motive, true));
    }

    /** A roll takes pips, a hit more of them: 17 for a blot on the 8 point, which 8 of 36 rolls hit, are 3.8 a roll. */
    @Test
    void pipsAreThoseOfARoll() {
        Explanation of =
                explained("1@4 1@5 4@6 3@8 1@11 3@13 2@24 / 5@6 4@8 4@13 1@22 1@bar", "4-3", "8/4 8/5", "24/21 8/4");
        assertEquals(
                "the opponent hits with 24 of its 36 rolls (blots on the 21, 11 and 5 points) instead of 8 and takes 12.0 pips"
                        + " a roll on average instead of 3.8",
                clause(of, Motive.SHOTS, true));
    }

    /**
     * More rolls hit after the weaker play, and yet its hits cost it less: the numbers would speak against what they are said
     * for.
     */
    @Test
    void numbersThatSpeakTheOtherWayAreNotSaid() {
        Explanation of = explained("2@4 4@6 3@8 4@13 2@24 / 5@6 3@8 1@9 4@13 1@20 1@24", "5-1", "13/8 6/5*", "13/7");
        ExplainedPlay best = of.best();
        ExplainedPlay rival = of.rivals().get(0);
        assertTrue(rival.facts().exposure().costly() > best.facts().exposure().costly());
        assertTrue(rival.swings().costOfHits() < best.swings().costOfHits());
        assertEquals(
                "the opponent's hits (a blot on the 7 point) cost "
                        + Numbers.thousandths(rival.swings().costOfHits()) + " points a game instead of "
                        + Numbers.thousandths(best.swings().costOfHits()),
                clause(of, Motive.SHOTS, false));
    }

    /** As many rolls hit, for nearly as many pips, but what is hit has no board left to hold a checker. */
    @Test
    void equalNumbersAreToldByWhatTheyCost() {
        Explanation of = explained("2@3 3@4 3@5 3@6 2@7 2@8 / 2@2 2@3 3@4 3@5 3@6 2@24", "6-1", "8/2 8/7", "8/2 3/2");
        String clause = clause(of, Motive.SHOTS, true);
        assertTrue(
                clause.matches(
                        "the opponent's hits \\(blots on the 8 and 3 points\\) cost 0\\.\\d{3} points a game instead of"
                                + " 0\\.\\d{3}"),
                clause);
    }

    /** A point and the row that it makes are one cause, told once. */
    @Test
    void aPointAndItsRowAreOneCause() {
        String said = said(explained("start", "6-1", "13/7 8/7", "13/6"));
        assertTrue(
                said.startsWith(
                        "Mainly because it does not make the 7 point, so that it has no points in a row in front of"
                                + " the opponent's checkers instead of 3."),
                said);
        assertEquals(said.indexOf("in a row"), said.lastIndexOf("in a row"), said);
    }

    /** A row that is the longer one only because a hit puts a checker behind it has nothing to do with points. */
    @Test
    void aHitMakesARowToo() {
        Explanation of =
                explained("2@3 3@4 3@5 3@6 2@22 2@24 / 1@4 3@5 3@6 3@7 3@9 2@10", "5-1", "22/17 22/21*", "22/17 6/5");
        String said = said(of);
        assertTrue(said.startsWith("Mainly because it does not hit, and it has no points in a row"), said);
        assertFalse(said.contains("so that"), said);
    }

    /** What is not hit is said once, with the point that is not made there. */
    @Test
    void pointingOnABlotIsOneIdea() {
        String said = said(explained("5@6 3@8 5@13 2@24 / 5@6 3@8 1@9 4@13 1@23 1@24", "6-4", "8/2* 6/2", "24/14"));
        assertTrue(said.startsWith("Mainly because it does not hit and make the 2 point"), said);
        assertFalse(said.contains("does not hit,") || said.contains("does not hit."), said);
    }

    @Test
    void gammonsThatCountNothingBringNothing() {
        Explanation of = explained("start", "6-4", "24/14", "8/2 6/2").with(new GammonValues(0, 0.5));
        String said = said(of);
        assertTrue(
                said.matches(
                        "(?s).*at this score winning a gammon counts no more than winning a single game, so the \\d\\.\\d"
                                + " more that it wins in 100 games bring it nothing.*"),
                said);
    }

    /** One checker off saves the gammon, and the straggler has 8 or 10 pips to go for it; all else is equal. */
    @Test
    void gammonsAreSavedByComingHome() {
        String said = said(explained("7@1 1@2 1@3 1@4 2@5 2@6 1@21 / 3@1 2@2 1@3", "5-2", "21/14", "21/16 6/4"));
        assertTrue(
                said.startsWith(
                        "Mainly because it has 10 pips instead of 8 to go before it can bear off a checker and save the"
                                + " gammon.\nOf 100 games it loses "),
                said);
    }

    /** The crossover to the 14 point is part of the way home. */
    @Test
    void theWayHomeIsToldOnce() {
        String said = said(explained("2@1 3@3 3@4 3@6 2@8 1@19 1@21 / 4@1 3@2", "5-2", "19/14 8/6", "8/3 4/2"));
        assertTrue(said.startsWith("Mainly because it has 30 pips instead of 25 to go before"), said);
        assertFalse(said.contains("crossover"), said);
    }

    /** With both sides still to pass each other an empty point at home says nothing about how checkers are spread. */
    @Test
    void emptyPointsAreToldWhereTheyCount() {
        assertEquals(
                "it has 4 checkers instead of 3 stacked beyond the third on a point",
                clause(
                        explained(
                                "5@6 3@8 1@11 4@13 1@24 1@bar / 1@4 5@6 3@8 4@13 2@24",
                                "5-1",
                                "bar/20 24/23",
                                "bar/24 11/6"),
                        Motive.SPREAD,
                        true));
        assertEquals(
                "it has 3 points instead of 2 empty in its home",
                clause(explained("1@1 1@3 1@5 2@6 / 2@4 3@5", "4-1", "6/2 1/off", "5/off"), Motive.SPREAD, true));
    }

    /** Two checkers off the low points instead of one off the 3 point: what is buried is fewer because it is off. */
    @Test
    void whatIsOffIsNotCalledBetterSpread() {
        Explanation of = explained("4@1 2@2 3@3 2@5 / 2@3 4@4 4@6 1@7 2@10 1@19 1@21", "2-1", "2/off 1/off", "3/off");
        String said = said(of);
        assertTrue(said.startsWith("Mainly because it bears off 1 checker instead of 2"), said);
        assertFalse(said.contains("buried"), said);
    }
}
