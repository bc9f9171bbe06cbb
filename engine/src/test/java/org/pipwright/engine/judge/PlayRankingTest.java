package org.pipwright.engine.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.play.RandomWalk;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.roll.Roll;

/** Plays ranked without lookahead, and the order of rankings. */
class PlayRankingTest {
    private static final PositionEvaluator EVALUATOR = new HashEvaluator();

    private static final Judge JUDGE = new Judge(Knowledge.of(HashEvaluator::new), 1);

    private static List<PlayVerdict> rank(Question question) {
        return JUDGE.ask(question, Effort.STATIC).plays();
    }

    /** One play at a time, by the position the opponent gets: slow and plain. */
    private static Outcomes after(Play play) {
        return EVALUATOR.evaluate(play.next()).swapped();
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 5, 15})
    void ranksAsEvaluatingOnePlayAtATimeDoes(int checkers) {
        RandomWalk walk = new RandomWalk(checkers, 7);
        int several = 0;
        for (int i = 0; i < 300; i++) {
            Position position = walk.next();
            Roll roll = walk.roll();
            List<PlayVerdict> ranking = rank(Question.of(position, roll));
            List<Play> legal = Plays.legal(position, roll);
            assertEquals(legal.size(), ranking.size());
            double best = legal.stream()
                    .mapToDouble(play -> after(play).equity())
                    .max()
                    .getAsDouble();
            double before = Double.POSITIVE_INFINITY;
            for (PlayVerdict ranked : ranking) {
                assertTrue(legal.remove(ranked.play()), "given twice or not legal: " + ranked);
                assertEquals(after(ranked.play()), ranked.outcomes());
                assertEquals(after(ranked.play()).equity(), ranked.equity());
                assertEquals(ranked.equity() - best, ranked.cost());
                assertTrue(ranked.equity() <= before);
                before = ranked.equity();
            }
            several += ranking.size() > 1 ? 1 : 0;
        }
        assertTrue(several > 100, "too few choices to say anything: " + several);
    }

    @Test
    void somePlaysAreRankedAmongThemselves() {
        RandomWalk walk = new RandomWalk(15, 8);
        int checked = 0;
        for (int i = 0; i < 100; i++) {
            Position position = walk.next();
            Roll roll = walk.roll();
            List<PlayVerdict> all = rank(Question.of(position, roll));
            if (all.size() < 4) {
                continue;
            }
            List<Play> some = new ArrayList<>(
                    List.of(all.get(3).play(), all.get(1).play(), all.get(3).play()));
            List<PlayVerdict> ranking = rank(Question.of(position, roll).only(some));
            assertEquals(
                    List.of(all.get(1).play(), all.get(3).play()),
                    ranking.stream().map(PlayVerdict::play).collect(Collectors.toList()));
            assertEquals(0, ranking.get(0).cost());
            assertEquals(
                    all.get(3).equity() - all.get(1).equity(), ranking.get(1).cost());
            checked++;
        }
        assertTrue(checked > 50, "too few: " + checked);
    }

    @Test
    void wonGamesCountAsTheyEnd() {
        Position position = PositionText.parse("1@1 1@2 / 15@22");
        List<PlayVerdict> ranking = rank(Question.of(position, Roll.of(2, 1)));
        assertEquals("2/off 1/off", ranking.get(0).play().toString());
        assertEquals(3, ranking.get(0).equity());
        assertEquals(2, ranking.size(), "2/1/off is legal as well");
    }

    @Test
    void aRollWithoutALegalPlayHasOneLine() {
        Position position = PositionText.parse("1@bar 14@1 / 2@1 2@2 2@3 2@4 2@5 5@6");
        List<PlayVerdict> ranking = rank(Question.of(position, Roll.of(6, 5)));
        assertEquals("no play", ranking.get(0).play().toString());
        assertEquals(1, ranking.size());
    }

    @Test
    void aPlayOfAnotherRollIsRefused() {
        Play play = PlayText.parse("8/5 6/5", Position.start(), Roll.of(3, 1));
        assertThrows(IllegalArgumentException.class, () -> Question.of(Position.start(), Roll.of(4, 1))
                .only(List.of(play)));
        assertThrows(
                IllegalArgumentException.class, () -> Question.of(PositionText.parse("off / 15@1"), Roll.of(4, 1)));
    }

    @Test
    void deeperPlaysComeFirstAndCostsAreAgainstTheFirst() {
        List<Play> plays = Plays.legal(Position.start(), Roll.of(3, 1)).subList(0, 3);
        Outcomes even = new Outcomes(0.5, 0, 0, 0.5, 0, 0);
        Outcomes good = new Outcomes(0.6, 0, 0, 0.4, 0, 0);
        Outcomes better = new Outcomes(0.7, 0, 0, 0.3, 0, 0);
        List<PlayVerdict> given = new ArrayList<>(List.of(
                new PlayVerdict(plays.get(0), better.equity(), better, Depth.STATIC, Basis.ESTIMATED),
                new PlayVerdict(plays.get(1), even.equity(), even, new Depth(2), Basis.ESTIMATED),
                new PlayVerdict(plays.get(2), good.equity(), good, new Depth(2), Basis.ESTIMATED)));
        List<PlayVerdict> ranking = PlayVerdict.inOrder(given, 1);
        Collections.reverse(given);
        assertEquals(ranking, PlayVerdict.inOrder(given, 1));
        assertEquals(
                List.of(plays.get(2), plays.get(1), plays.get(0)),
                ranking.stream().map(PlayVerdict::play).collect(Collectors.toList()));
        assertEquals(0, ranking.get(0).cost());
        assertEquals(-0.2, ranking.get(1).cost(), 1e-12);
        assertEquals(0, ranking.get(2).cost());
        assertEquals("lookahead 2", ranking.get(0).depth().toString());
    }

    @Test
    void aLookaheadIsNotNegative() {
        assertThrows(IllegalArgumentException.class, () -> new Depth(-1));
    }
}
