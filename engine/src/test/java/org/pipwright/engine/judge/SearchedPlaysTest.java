package org.pipwright.engine.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.TurnListener;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.play.RandomWalk;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadPlayer;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.RandomModels;

/** Plays ranked with lookahead. */
class SearchedPlaysTest {
    private static final Model MODEL = RandomModels.of(7, 16, 8);

    private static Judge judge() {
        return new Judge(Knowledge.of(MODEL), 2);
    }

    private static List<PlayVerdict> rank(Judge judge, Position position, Roll roll, int lookahead) {
        return judge.ask(Question.of(position, roll), Effort.lookahead(lookahead))
                .plays();
    }

    @Test
    void withoutLookaheadItRanksAsTheEvaluatorDoes() {
        PlayRanker ranker = new PlayRanker(new NetworkEvaluator(MODEL));
        RandomWalk walk = new RandomWalk(15, 71);
        try (Judge judge = judge()) {
            for (int i = 0; i < 100; i++) {
                Position position = walk.next();
                Roll roll = walk.roll();
                assertEquals(ranker.rank(position, roll), rank(judge, position, roll, 0));
            }
        }
    }

    @Test
    void everyPlayIsRankedAndTellsItsLookahead() {
        try (Judge judge = judge()) {
            List<PlayVerdict> ranking = rank(judge, Position.start(), Roll.of(6, 4), 2);
            assertEquals(Plays.legal(Position.start(), Roll.of(6, 4)).size(), ranking.size());
            List<Integer> lookaheads =
                    ranking.stream().map(line -> line.depth().lookahead()).collect(Collectors.toList());
            assertEquals(2, lookaheads.get(0));
            assertEquals(0, lookaheads.get(lookaheads.size() - 1), "the defaults drop some plays: " + lookaheads);
            for (int i = 1; i < lookaheads.size(); i++) {
                assertTrue(lookaheads.get(i) <= lookaheads.get(i - 1), "deepest first: " + lookaheads);
            }
        }
    }

    @Test
    void listedPlaysAllGetTheFullLookahead() {
        Roll roll = Roll.of(6, 4);
        List<Play> plays = List.of(
                PlayText.parse("24/14", Position.start(), roll),
                PlayText.parse("8/2 6/2", Position.start(), roll),
                PlayText.parse("24/14", Position.start(), roll));
        try (Judge judge = judge()) {
            List<PlayVerdict> ranking = judge.ask(
                            Question.of(Position.start(), roll).only(plays), Effort.lookahead(1))
                    .plays();
            assertEquals(2, ranking.size());
            ranking.forEach(line -> assertEquals(new Depth(1), line.depth()));
            assertThrows(IllegalArgumentException.class, () -> Question.of(Position.start(), Roll.of(2, 1))
                    .only(plays));
        }
    }

    @Test
    void aForcedPlayIsStillValuedDeeply() {
        Position position = PositionText.parse("1@bar 14@1 / 2@1 2@2 2@3 2@4 2@5 5@6");
        try (Judge judge = judge()) {
            List<PlayVerdict> ranking = rank(judge, position, Roll.of(6, 5), 2);
            assertEquals(new Depth(2), ranking.get(0).depth());
            assertEquals("no play", ranking.get(0).play().toString());
        }
    }

    @Test
    void finishedGamesAreRefused() {
        Position over = PositionText.parse("off / 15@1");
        try (Judge judge = judge()) {
            assertThrows(IllegalArgumentException.class, () -> Question.of(over, Roll.of(2, 1)));
            assertThrows(IllegalArgumentException.class, () -> judge.replies(over, 0));
        }
    }

    /** In games, the player takes what the ranking puts first, and with lookahead 0 it plays as the evaluator does. */
    @Test
    void thePlayerPlaysTheFirstOfTheRanking() {
        LookaheadPlayer player = new LookaheadPlayer(
                new Lookahead(Judgement.by(new NetworkEvaluator(MODEL)), LookaheadSettings.DEFAULT), 1);
        LookaheadPlayer shallow = new LookaheadPlayer(
                new Lookahead(Judgement.by(new NetworkEvaluator(MODEL)), LookaheadSettings.DEFAULT), 0);
        EvaluatingPlayer evaluating = new EvaluatingPlayer(new NetworkEvaluator(MODEL));
        int[] turns = new int[2];
        try (Judge judge = judge()) {
            TurnListener check = (planes, roll, legal, chosen) -> {
                Position position = Position.ofPlanes(planes, 0);
                boolean deep = turns[0]++ % 2 == 0;
                PlayVerdict first = rank(judge, position, roll, deep ? 1 : 0).get(0);
                if (deep) {
                    assertEquals(first.outcomes(), Outcomes.of(player.chancesOfChoice(), 0));
                } else {
                    assertEquals(chosen, evaluating.choose(planes, 0, legal, null));
                }
                Position result = Position.ofPlanes(legal.results(), chosen * Planes.STRIDE);
                turns[1] += result.equals(first.play().result()) ? 1 : 0;
            };
            new GameLoop().play(Position.start(), null, player, shallow, Dice.ofGame(1, 1), null, check);
        }
        assertTrue(turns[0] > 20, "a short game: " + turns[0]);
        assertTrue(turns[1] > turns[0] * 0.95, "only plays of equal worth may differ: " + turns[1] + " of " + turns[0]);
    }
}
