package org.pipwright.engine.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.OneSidedTable;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.bearoff.TwoSidedValue;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.engine.search.CubeSearch;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;

/** Ranking with the cube against its definition, exact tables, and what scores must change. */
class RankingWithCubeTest {
    /** Made-up chances: wins come from pips and from having left the 24 point, gammons from points made at home. */
    private static final PositionEvaluator EVALUATOR = (planes, at, out, outAt) -> {
        int them = at + Planes.SIDE;
        double lead = Planes.pips(planes, them) - Planes.pips(planes, at) + 4;
        double back = (Planes.count(planes, them, 24) - Planes.count(planes, at, 24));
        float win = (float) (1 / (1 + Math.exp(-(lead + back) / 25)));
        float gammon = gammons(planes, at);
        float lost = gammons(planes, them);
        out[outAt] = win * (1 - gammon);
        out[outAt + 1] = win * gammon;
        out[outAt + 2] = 0;
        out[outAt + 3] = (1 - win) * (1 - lost);
        out[outAt + 4] = (1 - win) * lost;
        out[outAt + 5] = 0;
    };

    private static float gammons(int[] planes, int side) {
        float share = 0.1f;
        for (int point = 1; point <= 6; point++) {
            share += Planes.count(planes, side, point) > 1 ? 0.1f : 0;
        }
        return share;
    }

    private static final Knowledge KNOWLEDGE = Knowledge.of(() -> EVALUATOR);

    private static List<PlayVerdict> rank(Judge judge, Question question, int lookahead) {
        return judge.ask(question, Effort.lookahead(lookahead)).plays();
    }

    private static Question question(Position position, Roll roll, Stakes stakes, CubeState cube) {
        return Question.of(position, roll).with(stakes, cube);
    }

    private static Stakes match(int mine, int theirs, boolean crawford) {
        return new MatchStakes(new MatchScore(mine, theirs, crawford));
    }

    /** Straight from the definition: the opponent's best cube action, with lookahead, seen from this side. */
    private static double naive(Play play, CubeTerms terms, CubeState cube, int lookahead) {
        Position next = play.next();
        if (next.finished()) {
            return terms.won(GameResult.of(next), cube);
        }
        return terms.toOther(new CubeSearch(Judgement.by(EVALUATOR))
                .values(next, cube.swapped(), terms.swapped(), lookahead)
                .best());
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1})
    void valuesAreThoseOfTheDefinition(int lookahead) {
        for (Stakes stakes : List.of(MoneyStakes.USUAL, match(3, 2, false), match(4, 1, true))) {
            for (CubeState cube : List.of(CubeState.START, new CubeState(2, CubeOwner.ME))) {
                for (String text : List.of("1@24 1@6 1@2 / 2@20 1@4", "2@3 1@1 / 1@2 1@23", "1@1 1@2 / 1@6 1@3")) {
                    Position position = PositionText.parse(text);
                    Roll roll = Roll.of(4, 1);
                    List<Play> plays = Plays.legal(position, roll);
                    List<PlayVerdict> ranked;
                    try (Judge judge = new Judge(KNOWLEDGE, 2)) {
                        ranked = rank(
                                judge, question(position, roll, stakes, cube).only(plays), lookahead);
                    }
                    assertEquals(plays.size(), ranked.size());
                    for (PlayVerdict play : ranked) {
                        assertEquals(naive(play.play(), KNOWLEDGE.terms(stakes), cube, lookahead), play.value(), 1e-9);
                        assertEquals(play.value() - ranked.get(0).value(), play.cost(), 1e-12);
                    }
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void threadsMakeNoDifferenceAndTheDeepestComeFirst(int lookahead) {
        Position position = PositionText.parse("2@24 3@13 2@8 4@6 2@5 / 2@24 4@13 3@8 4@6");
        Question question = question(position, Roll.of(5, 2), match(5, 3, false), CubeState.START);
        List<PlayVerdict> alone;
        try (Judge one = new Judge(KNOWLEDGE, 1);
                Judge three = new Judge(KNOWLEDGE, 3)) {
            alone = rank(one, question, lookahead);
            assertEquals(alone, rank(three, question, lookahead));
        }
        assertEquals(lookahead, alone.get(0).lookahead());
        for (int i = 1; i < alone.size(); i++) {
            assertTrue(alone.get(i).lookahead() <= alone.get(i - 1).lookahead());
            assertTrue(alone.get(i).cost() <= 0);
        }
    }

    /** In the exact table the value after each play is that of the table, whoever owns the cube. */
    @ParameterizedTest
    @EnumSource(CubeOwner.class)
    void endingsAreExact(CubeOwner owner) {
        SideIndex sides = new SideIndex(6, 3);
        TwoSidedTable table = TwoSidedTable.build(sides, 1, TableProgress.NONE);
        EndgameTables tables = EndgameTables.of(OneSidedTable.build(sides, 1, TableProgress.NONE), table);
        CubeState cube = new CubeState(2, owner);
        SplittableRandom random = new SplittableRandom(owner.ordinal());
        int different = 0;
        try (Judge judge = new Judge(KNOWLEDGE.with(tables), 1)) {
            for (int i = 0; i < 200; i++) {
                Position position = Position.of(side(random), side(random));
                Roll roll = Roll.all().get(random.nextInt(21));
                Question question = question(position, roll, MoneyStakes.USUAL, cube);
                for (PlayVerdict play : rank(judge, question, i % 2)) {
                    int[] next = play.play().next().toPlanes();
                    boolean won = play.play().next().finished();
                    TwoSidedValue value = won
                            ? new TwoSidedValue(0, -1, -1, -1)
                            : table.value(sides.of(next, 0), sides.of(next, Planes.SIDE));
                    double expected = -(owner == CubeOwner.CENTRE
                            ? value.centred()
                            : owner == CubeOwner.ME ? value.theirs() : value.mine());
                    assertEquals(expected, play.value(), 1e-9, position + " " + roll);
                    assertEquals(Basis.EXACT, play.basis());
                    different += play.cost() < 0 ? 1 : 0;
                }
            }
        }
        assertTrue(different > 25, "costs seen: " + different);
    }

    private static int[] side(SplittableRandom random) {
        int[] side = new int[26];
        int checkers = 1 + random.nextInt(3);
        for (int i = 0; i < checkers; i++) {
            side[1 + random.nextInt(6)]++;
        }
        side[0] = Position.FULL - checkers;
        return side;
    }

    /** Who needs a gammon ranks by gammons; who needs only the game does not look at them. */
    @Test
    void theSamePositionHasDifferentBestPlays() {
        Position position = Position.start();
        Roll roll = Roll.of(6, 4);
        try (Judge judge = new Judge(KNOWLEDGE, 1)) {
            PlayVerdict forGammon = rank(judge, question(position, roll, match(2, 1, true), CubeState.START), 0)
                    .get(0);
            PlayVerdict forGame = rank(judge, question(position, roll, match(1, 1, false), CubeState.START), 0)
                    .get(0);
            assertNotEquals(forGammon.play(), forGame.play());
            assertTrue(forGammon.outcomes().winGammon() > forGame.outcomes().winGammon());
            assertTrue(forGammon.outcomes().win() < forGame.outcomes().win());
        }
    }

    /** At 1-away against 1-away a game decides the match: a point is half of it. */
    @Test
    void gradesAreInPoints() {
        Question last = question(Position.start(), Roll.of(6, 1), match(1, 1, false), CubeState.START);
        try (Judge judge = new Judge(KNOWLEDGE, 1)) {
            for (PlayVerdict play : rank(judge, last, 0)) {
                assertEquals(play.cost() / 0.5, play.points(), 1e-12);
                assertEquals(Grade.ofCost(2 * play.cost()), play.grade());
            }
        }
    }

    /** What the time allows is what the same lookahead gives without a limit. */
    @ParameterizedTest
    @ValueSource(ints = {1, 3})
    void withATimeLimitItIsTheRankingOfTheLookaheadReached(int threads) {
        Position position = PositionText.parse("2@24 3@13 2@8 4@6 2@5 / 2@24 4@13 3@8 4@6");
        Roll roll = Roll.of(5, 2);
        Question question = question(position, roll, match(5, 3, false), CubeState.START);
        // Knowledge of its own: what other tests have left in memory would be found in no time.
        try (Judge judge = new Judge(Knowledge.of(() -> EVALUATOR), threads)) {
            for (Duration time : List.of(Duration.ofNanos(1), Duration.ofMillis(20), Duration.ofMillis(300))) {
                List<PlayVerdict> timed =
                        judge.ask(question, Effort.within(time)).plays();
                int reached = timed.get(0).lookahead();
                assertTrue(time.toMillis() > 0 || reached == 0, "reached " + reached);
                assertEquals(rank(judge, question, reached), timed);
            }
        }
    }

    /** Enough time for the largest lookahead: two checkers, few plays. */
    @Test
    void withTimeToSpareItLooksAsFarAsItCan() {
        Position position = PositionText.parse("1@24 14@off / 1@2 14@off");
        Question question = question(position, Roll.of(2, 1), MoneyStakes.USUAL, CubeState.START);
        try (Judge judge = new Judge(KNOWLEDGE, 2)) {
            List<PlayVerdict> timed =
                    judge.ask(question, Effort.within(Duration.ofMinutes(5))).plays();
            assertEquals(LookaheadSettings.MAX, timed.get(0).lookahead());
        }
    }

    /** Those played out come first whatever the others seem to be worth, and costs are against the best of them. */
    @Test
    void gamesGoBeforeLookahead() {
        Stakes stakes = match(3, 2, false);
        try (Judge judge = new Judge(KNOWLEDGE, 1)) {
            List<PlayVerdict> ranking =
                    rank(judge, question(Position.start(), Roll.of(6, 4), stakes, CubeState.START), 1);
            PlayVerdict last = ranking.get(ranking.size() - 1);
            Depth games = new Depth(0, 36, 0.01);
            List<PlayVerdict> mixed = new ArrayList<>(ranking);
            mixed.set(0, ranking.get(0).playedOut(0.2, games));
            mixed.set(ranking.size() - 1, last.playedOut(0.3, games));
            double point = KNOWLEDGE.terms(stakes).point(CubeState.START);
            List<PlayVerdict> ordered = PlayVerdict.inOrder(mixed, point);
            assertEquals(last.play(), ordered.get(0).play());
            assertEquals(0, ordered.get(0).cost());
            assertEquals(last.lookahead(), ordered.get(0).lookahead(), "of the chances");
            assertEquals(ranking.get(0).play(), ordered.get(1).play());
            assertEquals(-0.1, ordered.get(1).cost(), 1e-12);
            assertEquals(-0.1 / point, ordered.get(1).points(), 1e-12);
            assertEquals(ranking.get(1).play(), ordered.get(2).play());
        }
    }

    @Test
    void whatCannotBeRankedIsRefused() {
        Question question = question(Position.start(), Roll.of(3, 1), MoneyStakes.USUAL, CubeState.START);
        List<Play> foreign = Plays.legal(Position.start(), Roll.of(6, 5));
        try (Judge judge = new Judge(KNOWLEDGE, 1)) {
            assertThrows(IllegalArgumentException.class, () -> rank(judge, question, 7));
            assertThrows(IllegalArgumentException.class, () -> question.only(foreign));
        }
    }
}
