package org.pipwright.engine.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.bearoff.TableListener;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubelessStakes;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.parallel.Post;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.engine.search.RandomModels;

/** Questions and rollouts answered elsewhere have the answers they have here, bit for bit. */
class ElsewhereTest {
    private static final Knowledge KNOWLEDGE = Knowledge.of(RandomModels.of(3, 6))
            .with(EndgameTables.standard(TableFolder.ofUser(System.getenv()), 1, TableListener.SILENT));

    private static final Position CONTACT = PositionText.parse("5@6 3@8 3@7 2@24 2@3 / 4@6 3@8 5@13 2@24 1@bar");
    private static final Position RACE = PositionText.parse("5@8 4@7 3@6 3@10 / 5@8 4@7 3@6 3@11");
    private static final Position END = PositionText.parse("2@3 1@5 / 2@2 1@6");

    private static List<Question> questions() {
        List<Question> questions = new ArrayList<>();
        Random random = new Random(11);
        for (Position position : List.of(Position.start(), CONTACT, RACE, END)) {
            Roll roll = Roll.of(1 + random.nextInt(6), 1 + random.nextInt(6));
            for (Question question : List.of(Question.before(position), Question.of(position, roll))) {
                questions.add(question);
                questions.add(question.forMoney());
                questions.add(question.inMatch(2 + random.nextInt(4), 2 + random.nextInt(4)));
            }
        }
        return questions;
    }

    private static List<Verdict> elsewhere(Knowledge known, Effort effort, List<Question> questions) {
        Post post = new Post();
        List<Verdict> verdicts = new ArrayList<>();
        QuestionTrade trade = new QuestionTrade(post.share(known.portable()), effort);
        post.inOrder(trade, questions.iterator(), verdicts::add, () -> false);
        return verdicts;
    }

    private static void assertSame(Knowledge known, Effort effort, List<Question> questions) {
        try (Judge judge = new Judge(known, 2)) {
            assertEquals(judge.ask(questions, effort, Progress.NONE), elsewhere(known, effort, questions));
        }
    }

    @Test
    void verdictsAreTheSame() {
        assertSame(KNOWLEDGE, Effort.lookahead(1), questions());
        assertSame(KNOWLEDGE, Effort.STATIC.withGames(36), questions().subList(18, 24));
    }

    @Test
    void withoutTablesTooAndWithAnotherMatchTable() {
        double[][] chances = {{0, 0, 0, 0}, {0, 0.5, 0.7, 0.8}, {0, 0.3, 0.5, 0.6123456789}, {0, 0.2, 0.3876543212, 0.5}
        };
        MatchTable table = new MatchTable(chances, new double[] {0, 0.5, 0.49, 0.3});
        assertSame(Knowledge.of(RandomModels.of(3, 6)), Effort.STATIC, questions());
        assertSame(
                Knowledge.of(RandomModels.of(3, 6)).with(table),
                Effort.STATIC,
                List.of(Question.before(CONTACT).inMatch(2, 3)));
    }

    @Test
    void aFormulaCannotBeSent() {
        Knowledge formula = Knowledge.of(PipsEvaluator::new);
        assertThrows(IllegalStateException.class, formula::portable);
    }

    /** What a rollout says, here and elsewhere, with two kinds of listeners. */
    private static void assertSameRollout(
            RolloutSettings settings, BiFunction<Rollouts, RolloutListener, RolloutReport> asked) {
        for (int most : new int[] {Integer.MAX_VALUE, 2}) {
            Post post = new Post();
            try (Rollouts here = new Rollouts(KNOWLEDGE::judgement, KNOWLEDGE::terms, settings, 2);
                    Rollouts there = new Rollouts(post.share(KNOWLEDGE.portable()), settings, post)) {
                List<RolloutReport> rounds = new ArrayList<>();
                List<RolloutReport> roundsThere = new ArrayList<>();
                RolloutReport report = asked.apply(here, stopping(rounds, most));
                assertEquals(report, asked.apply(there, stopping(roundsThere, most)));
                assertEquals(rounds, roundsThere);
            }
        }
    }

    private static RolloutListener stopping(List<RolloutReport> rounds, int most) {
        AtomicInteger left = new AtomicInteger(most);
        return report -> rounds.add(report) && left.decrementAndGet() > 0;
    }

    @Test
    void rolloutsAreTheSame() {
        RolloutSettings settings = RolloutSettings.DEFAULT.withTrials(108).withTruncation(6);
        List<Play> plays = Plays.legal(CONTACT, Roll.of(4, 2)).subList(0, 3);
        Stakes match = new MatchStakes(new MatchScore(3, 5, false));
        for (Stakes stakes : List.of(new CubelessStakes(), MoneyStakes.USUAL, match)) {
            assertSameRollout(
                    settings,
                    (rollouts, listener) -> rollouts.compare(
                            CONTACT, Roll.of(4, 2), plays, stakes, CubeState.START, WorkFile.NONE, listener));
        }
        assertSameRollout(settings, (rollouts, listener) -> rollouts.odds(END, WorkFile.NONE, listener));
        assertSameRollout(
                settings.withSure(3).withTrials(720),
                (rollouts, listener) ->
                        rollouts.actions(END, CubeState.START, MoneyStakes.USUAL, WorkFile.NONE, listener));
    }
}
