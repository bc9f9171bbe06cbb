package org.pipwright.engine.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayRanker;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.regime.RandomBoards;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.RollReply;

class SwingsTest {
    private static Judge judge(int threads) {
        return new Judge(Knowledge.of(PipEvaluator::new), threads);
    }

    /** Each reply is the best of a ranking of that roll alone, and their mean is what one roll more of lookahead gives. */
    @ParameterizedTest
    @CsvSource({"0, 30", "1, 3"})
    void repliesAreTheBestOnes(int lookahead, int boards) {
        try (Judge one = judge(1);
                Judge two = judge(2)) {
            List<NaiveBoard> all = RandomBoards.of(17 + lookahead, boards).toList();
            for (NaiveBoard board : all) {
                Position position = Position.ofPlanes(board.toPlanes(), 0);
                List<RollReply> replies = one.replies(position, lookahead);
                assertEquals(replies, two.replies(position, lookahead));
                assertEquals(Roll.all(), replies.stream().map(RollReply::roll).toList());
                Swings swings = Swings.of(replies, 0);
                assertEquals(
                        -one.ask(Question.before(position), Effort.lookahead(lookahead + 1))
                                .value(),
                        swings.mean(),
                        1e-5,
                        position.toString());
                double changes = 0;
                for (Swing swing : swings.rolls()) {
                    assertEquals(swing.equity() - swings.mean(), swing.change(), 1e-12);
                    changes += swing.roll().ways() * swing.change();
                }
                assertEquals(0, changes, 1e-9);
                for (int i = 1; i < swings.rolls().size(); i++) {
                    assertTrue(swings.rolls().get(i - 1).change()
                            <= swings.rolls().get(i).change());
                }
                if (lookahead == 0) {
                    repliesByRanking(position, replies);
                }
            }
        }
    }

    private static void repliesByRanking(Position position, List<RollReply> replies) {
        PlayRanker ranker = new PlayRanker(new PipEvaluator());
        for (RollReply reply : replies) {
            PlayVerdict best = ranker.rank(position, reply.roll()).get(0);
            assertEquals(best.outcomes().equity(), reply.outcomes().equity(), 1e-6);
        }
    }

    private static Explanation explanation(Judge judge, Position position, Roll roll, int lookahead) {
        List<PlayVerdict> plays = judge.ask(Question.of(position, roll), Effort.lookahead(lookahead))
                .plays();
        return Explanation.of(position, plays, judge, 0);
    }

    @Test
    void aFinishedGameHasNoReplies() {
        Position position = PositionText.parse("1@1 / 5@6");
        Play off = Plays.legal(position, Roll.of(2, 1)).get(0);
        try (Judge judge = judge(1)) {
            Explanation explanation = explanation(judge, position, Roll.of(2, 1), 0);
            assertEquals(off, explanation.best().facts().play());
            assertEquals(List.of(), explanation.best().swings().rolls());
            assertEquals(List.of(), explanation.best().swings().feared(3));
            assertEquals(List.of(), explanation.rivals());
        }
    }

    /** What a play loses to another is the mean over the opponent's rolls of what it loses to it against each. */
    @Test
    void differencesBetweenPlaysAreMadeUpOfRolls() {
        try (Judge judge = judge(1)) {
            Explanation explanation = explanation(judge, Position.start(), Roll.of(6, 2), 1);
            Swings best = explanation.best().swings();
            for (ExplainedPlay rival : explanation.rivals()) {
                List<Swing> worse = rival.swings().worseThan(best, Roll.COUNT);
                List<Swing> better = best.worseThan(rival.swings(), Roll.COUNT);
                double sum = 0;
                for (Swing swing : worse) {
                    sum += swing.roll().ways() * swing.change();
                }
                for (Swing swing : better) {
                    sum -= swing.roll().ways() * swing.change();
                }
                assertEquals(36 * (rival.swings().mean() - best.mean()), sum, 1e-9);
                assertEquals(worse.subList(0, 1), rival.swings().worseThan(best, 1));
                assertTrue(worse.get(0).change() <= worse.get(worse.size() - 1).change());
            }
        }
    }

    @Test
    void namesTheExtremeRolls() {
        Outcomes won = new Outcomes(1, 0, 0, 0, 0, 0);
        Outcomes even = new Outcomes(0.5, 0, 0, 0.5, 0, 0);
        Play any = Plays.legal(Position.start(), Roll.of(6, 6)).get(0);
        List<RollReply> replies = Roll.all().stream()
                .map(roll -> new RollReply(roll, any, roll.equals(Roll.of(6, 6)) ? won : even))
                .toList();
        Swings swings = Swings.of(replies, 0);
        assertEquals(-1 / 36.0, swings.mean(), 1e-12);
        assertEquals(
                List.of(Roll.of(6, 6)),
                swings.feared(3).stream().map(Swing::roll).toList());
        assertEquals(-35 / 36.0, swings.feared(3).get(0).change(), 1e-12);
        assertEquals(3, swings.hoped(3).size());
        assertEquals(1 / 36.0, swings.hoped(3).get(0).change(), 1e-12);
    }

    @Test
    void differencesOfChances() {
        try (Judge judge = judge(1)) {
            Explanation explanation = explanation(judge, Position.start(), Roll.of(6, 5), 0);
            for (ExplainedPlay rival : explanation.rivals()) {
                assertEquals(
                        rival.ranked().equity() - explanation.best().ranked().equity(),
                        2 * rival.moreWins(explanation.best())
                                + rival.moreGammons(explanation.best())
                                - rival.moreGammonsLost(explanation.best()),
                        1e-6);
            }
        }
    }
}
