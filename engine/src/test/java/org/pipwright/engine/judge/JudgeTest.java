package org.pipwright.engine.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.OneSidedTable;
import org.pipwright.engine.bearoff.RaceOutlook;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.engine.search.Choice;
import org.pipwright.engine.search.CubeSearch;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.ParallelLookahead;

/** One question, one verdict: whoever asks, alone or among others, with and without a cube. */
class JudgeTest {
    private static final EndgameTables TABLES = EndgameTables.of(
            OneSidedTable.build(EndgameTables.HOME, 1, TableProgress.NONE),
            TwoSidedTable.build(new SideIndex(6, 3), 1, TableProgress.NONE));
    private static final Knowledge KNOWLEDGE = Knowledge.of(PipsEvaluator::new).with(TABLES);

    private static final Position RACE = PositionText.parse("5@8 4@7 3@6 3@10 / 5@8 4@7 3@6 3@11");
    private static final Roll RACE_ROLL = Roll.parse("5-2");
    private static final Position END = PositionText.parse("2@2 1@5 / 2@3 1@6");
    private static final Position WON = won();
    private static final Stakes MATCH = new MatchStakes(new MatchScore(4, 2, false));

    /** The side that has just played, not on roll any more, has won a gammon. */
    private static Position won() {
        int[] mine = new int[Planes.PLACES];
        int[] theirs = new int[Planes.PLACES];
        mine[1] = 15;
        theirs[Planes.OFF] = 15;
        return Position.of(mine, theirs);
    }

    private static Verdict ask(Question question, Effort effort) {
        try (Judge judge = new Judge(KNOWLEDGE, 1)) {
            return judge.ask(question, effort);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void playsInContactAreThoseOfTheSearch(int lookahead) {
        Question question = Question.of(Position.start(), Roll.parse("3-1"));
        List<Play> legal = Plays.legal(question.position(), question.roll());
        Choice choice = new Choice(question.position().toPlanes(), Plays.results(legal), legal.size());
        try (ParallelLookahead search = new ParallelLookahead(KNOWLEDGE::judgement, LookaheadSettings.DEFAULT, 1)) {
            List<PlayVerdict> found = search.search(choice, lookahead).stream()
                    .map(each -> new PlayVerdict(
                            legal.get(each.result()),
                            each.outcomes().equity(),
                            each.outcomes(),
                            new Depth(each.lookahead()),
                            Basis.ESTIMATED))
                    .toList();
            assertEquals(
                    PlayVerdict.inOrder(found, 1),
                    ask(question, Effort.lookahead(lookahead)).plays());
            Verdict odds = ask(Question.before(Position.start()), Effort.lookahead(lookahead));
            assertEquals(search.evaluate(Position.start().toPlanes(), lookahead), odds.outcomes());
            assertEquals(lookahead, odds.depth().lookahead());
        }
    }

    /** The slow way: each play's race simulated by itself, the best chosen by hand. */
    @Test
    void racesBeyondTheTablesAreSimulatedForEveryQuestion() {
        List<Play> some = Plays.legal(RACE, RACE_ROLL).subList(0, 6);
        Play best = some.stream()
                .max(Comparator.comparingDouble(play -> simulated(play).equity()))
                .orElseThrow();
        Question question = Question.of(RACE, RACE_ROLL).only(some);
        for (Question each : List.of(question, question.forMoney(), question.with(MATCH, CubeState.START))) {
            Verdict verdict = ask(each, Effort.STATIC);
            for (PlayVerdict play : verdict.plays()) {
                assertEquals(
                        simulated(play.play()), play.outcomes(), play.play().toString());
                assertEquals(Basis.SIMULATED, play.basis());
            }
            assertEquals(best, verdict.best().play(), each.stakes().toString());
        }
        Verdict all = ask(Question.of(RACE, RACE_ROLL), Effort.lookahead(1));
        assertEquals(Basis.SIMULATED, all.basis());
        assertTrue(
                all.plays().stream().allMatch(play -> play.depth().lookahead() == 1),
                "as deep as the deepest of others");
        for (PlayVerdict play : ask(question, Effort.STATIC.withRaces(false)).plays()) {
            assertEquals(Basis.ESTIMATED, play.basis());
            assertNotEquals(simulated(play.play()), play.outcomes());
        }
    }

    private static Outcomes simulated(Play play) {
        return RaceOutlook.of(play.next(), TABLES).outcomes().swapped();
    }

    @Test
    void manyQuestionsGetTheAnswersOfEach() {
        List<Question> questions = new ArrayList<>();
        for (Question each : List.of(
                Question.of(RACE, RACE_ROLL).only(Plays.legal(RACE, RACE_ROLL).subList(0, 4)),
                Question.of(Position.start(), Roll.parse("6-4")),
                Question.before(RACE),
                Question.before(END),
                Question.before(Position.start()))) {
            questions.addAll(List.of(each, each.forMoney(), each.inMatch(4, 2)));
        }
        List<Verdict> each =
                questions.stream().map(one -> ask(one, Effort.lookahead(1))).collect(Collectors.toList());
        for (int threads : new int[] {1, 3}) {
            List<Integer> told = new ArrayList<>();
            try (Judge judge = new Judge(KNOWLEDGE, threads)) {
                assertEquals(
                        each, judge.ask(questions, Effort.lookahead(1), (done, all) -> told.add(100 * done + all)));
                assertEquals(each.get(1), judge.ask(questions.get(1), Effort.lookahead(1)));
            }
            assertEquals(15, told.size());
            assertEquals(1515, told.get(14));
        }
    }

    @Test
    void questionsAndVerdictsAreWrittenAndReadBack() throws IOException, ClassNotFoundException {
        for (Question question : List.of(
                Question.of(Position.start(), Roll.parse("3-1")).forMoney(),
                Question.before(RACE).with(MATCH, new CubeState(2, CubeOwner.THEM)),
                Question.of(RACE, RACE_ROLL).only(Plays.legal(RACE, RACE_ROLL).subList(0, 2)))) {
            assertEquals(question, copy(question));
            Verdict verdict = ask(question, Effort.STATIC);
            assertEquals(verdict, copy(verdict));
            assertEquals(verdict, ask((Question) copy(question), (Effort) copy(Effort.STATIC)));
        }
    }

    private static Object copy(Object original) throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(original);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return in.readObject();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1})
    void cubesAreThoseOfTheCubeSearch(int lookahead) {
        for (Stakes stakes : List.of(MoneyStakes.USUAL, MATCH)) {
            Question question = Question.before(Position.start()).with(stakes, CubeState.START);
            Verdict verdict = ask(question, Effort.lookahead(lookahead));
            assertEquals(
                    new CubeSearch(KNOWLEDGE.judgement())
                            .values(Position.start(), CubeState.START, KNOWLEDGE.terms(stakes), lookahead),
                    verdict.cube());
            assertEquals(verdict.cube().best(), verdict.value());
            assertEquals(
                    ask(Question.before(Position.start()), Effort.lookahead(lookahead))
                            .outcomes(),
                    verdict.outcomes());
            assertEquals(Basis.ESTIMATED, verdict.basis());
            Question rolled = Question.of(Position.start(), Roll.parse("6-2")).with(stakes, CubeState.START);
            List<Play> legal = Plays.legal(rolled.position(), rolled.roll());
            for (PlayVerdict play :
                    ask(rolled.only(legal), Effort.lookahead(lookahead)).plays()) {
                CubeValues theirs = new CubeSearch(KNOWLEDGE.judgement())
                        .values(play.play().next(), CubeState.START, KNOWLEDGE.terms(stakes.swapped()), lookahead);
                assertEquals(KNOWLEDGE.terms(stakes).toOther(theirs.best()), play.value(), 1e-9);
            }
        }
    }

    /** Exact chances of a few checkers on their way home: what a cube adds to them still comes from a model. */
    @Test
    void cubesOfShortRacesAreNotCalledExact() {
        Position race = PositionText.parse("2@7 1@10 / 3@9");
        Roll roll = Roll.of(6, 1);
        assertEquals(Basis.EXACT, ask(Question.before(race), Effort.STATIC).basis());
        assertEquals(Basis.EXACT, ask(Question.of(race, roll), Effort.STATIC).basis());
        for (Question question : List.of(
                Question.before(race).forMoney(), Question.of(race, roll).inMatch(5, 3))) {
            assertEquals(Basis.DISTRIBUTIONS, ask(question, Effort.STATIC).basis());
        }
    }

    @Test
    void theBasisSaysWhatIsKnown() {
        assertEquals(Basis.EXACT, ask(Question.before(END), Effort.STATIC).basis());
        assertEquals(
                Basis.EXACT, ask(Question.before(END).forMoney(), Effort.STATIC).basis());
        assertEquals(
                Basis.EXACT,
                ask(Question.before(END).inMatch(4, 2), Effort.STATIC).basis());
        Position home = PositionText.parse("5@6 5@5 5@4 / 5@6 5@5 5@3");
        assertEquals(
                Basis.DISTRIBUTIONS, ask(Question.before(home), Effort.STATIC).basis());
        assertEquals(
                Basis.DISTRIBUTIONS,
                ask(Question.before(home).forMoney(), Effort.lookahead(1)).basis());
        for (Question question :
                List.of(Question.before(RACE), Question.before(RACE).forMoney())) {
            Verdict verdict = ask(question, Effort.lookahead(1));
            assertEquals(Basis.SIMULATED, verdict.basis());
            assertEquals(RaceOutlook.of(RACE, TABLES).outcomes(), verdict.outcomes());
            assertEquals(
                    Basis.ESTIMATED,
                    ask(question, Effort.lookahead(1).withRaces(false)).basis());
        }
        Position few = PositionText.parse("2@7 2@10 / 3@9");
        for (Question question :
                List.of(Question.before(few), Question.before(few).forMoney())) {
            assertEquals(Basis.DISTRIBUTIONS, ask(question, Effort.STATIC).basis());
        }
        Verdict over = ask(Question.before(WON), Effort.lookahead(2));
        assertEquals(-2, over.value());
        assertEquals(Basis.EXACT, over.basis());
        try (Judge net = new Judge(Knowledge.of(PipsEvaluator::new), 1)) {
            assertEquals(
                    Basis.ESTIMATED,
                    net.ask(Question.before(END), Effort.STATIC).basis());
            assertEquals(
                    Basis.ESTIMATED,
                    net.ask(Question.before(RACE), Effort.STATIC).basis());
        }
    }

    @Test
    void gamesGiveValuesWithErrors() {
        Effort effort = Effort.STATIC.withGames(36);
        Question end = Question.of(END, Roll.parse("2-1"));
        for (Question question : List.of(end, end.forMoney(), end.inMatch(4, 2))) {
            Verdict verdict = ask(question, effort);
            assertEquals(36, verdict.depth().games());
            assertEquals(Basis.ESTIMATED, verdict.basis());
            long played = verdict.plays().stream()
                    .filter(play -> play.depth().games() == 36)
                    .count();
            assertEquals(
                    ask(question, Effort.STATIC).candidates(Verdict.CANDIDATES).size(), played);
        }
        Position open = PositionText.parse("3@6 3@5 / 3@22 3@4");
        Verdict odds = ask(Question.before(open), effort);
        assertTrue(odds.error() > 0, "games have errors");
        Verdict cube = ask(Question.before(open).forMoney(), effort);
        assertEquals(36, cube.depth().games());
        assertEquals(cube.cube().best(), cube.value());
    }

    @Test
    void whatIsToldToStopGivesNoAnswer() {
        Progress stop = Progress.until(() -> true);
        Question question = Question.of(Position.start(), Roll.parse("3-1"));
        try (Judge judge = new Judge(KNOWLEDGE, 2)) {
            for (Question each : List.of(question, question.forMoney(), Question.before(RACE), Question.before(END))) {
                for (Effort effort :
                        List.of(Effort.STATIC, Effort.within(Duration.ofSeconds(5)), Effort.STATIC.withGames(36))) {
                    assertThrows(CancellationException.class, () -> judge.ask(each, effort, stop));
                }
            }
            assertThrows(CancellationException.class, () -> judge.ask(List.of(question), Effort.STATIC, stop));
            assertThrows(CancellationException.class, () -> judge.luck(question, true, stop));
            assertTrue(judge.ask(question, Effort.STATIC).plays().size() > 10, "it goes on with the next question");
        }
    }

    /** Two rolls differ in luck by what their best plays leave. */
    @Test
    void luckIsOfARoll() {
        Question good = Question.of(Position.start(), Roll.parse("3-1")).forMoney();
        Question bad = Question.of(Position.start(), Roll.parse("4-1")).forMoney();
        try (Judge judge = new Judge(KNOWLEDGE, 1)) {
            double luck = judge.luck(good, true, Progress.NONE) - judge.luck(bad, true, Progress.NONE);
            // The quick form of the terms, which luck is measured by, is near the model itself.
            assertEquals(
                    ask(good, Effort.STATIC).value() - ask(bad, Effort.STATIC).value(), luck, 0.02);
            assertThrows(
                    IllegalArgumentException.class,
                    () -> judge.luck(Question.before(Position.start()), true, Progress.NONE));
        }
    }

    @Test
    void timeIsUsedForLookahead() {
        Question question = Question.before(Position.start());
        for (Question each : List.of(question, question.forMoney())) {
            assertTrue(ask(each, Effort.within(Duration.ofMillis(400))).depth().lookahead() > 0, each.toString());
        }
    }

    @Test
    void gradesOfActionsAreTheirCostsInPoints() {
        for (Stakes stakes : List.of(MoneyStakes.USUAL, MATCH)) {
            Verdict verdict = ask(Question.before(RACE).with(stakes, CubeState.START), Effort.STATIC.withRaces(false));
            double unit = KNOWLEDGE.terms(stakes).point(CubeState.START);
            for (CubeAction action : verdict.cube().choices()) {
                assertEquals(Grade.ofCost(verdict.cube().cost(action) / unit), verdict.grade(action));
            }
        }
        assertThrows(IllegalStateException.class, () -> ask(Question.before(Position.start()), Effort.STATIC)
                .grade(CubeAction.ROLL));
        assertThrows(IllegalStateException.class, () -> ask(Question.before(Position.start()), Effort.STATIC)
                .best());
    }

    @Test
    void theOutlookBelongsToTheCube() {
        try (Judge judge = new Judge(KNOWLEDGE, 1)) {
            Verdict verdict = judge.ask(Question.before(RACE).forMoney(), Effort.STATIC);
            CubeOutlook outlook = judge.outlook(verdict, Effort.STATIC);
            assertTrue(
                    outlook.market().orElseThrow().losers() > 0
                            && outlook.market().orElseThrow().losers() < 1,
                    outlook.toString());
            assertTrue(
                    outlook.window().orElseThrow().takePoint() > 0.15
                            && outlook.window().orElseThrow().takePoint() < 0.3,
                    outlook.toString());
            Verdict none = judge.ask(Question.before(RACE), Effort.STATIC);
            assertThrows(IllegalArgumentException.class, () -> judge.outlook(none, Effort.STATIC));
        }
    }

    @Test
    void questionsThatCannotBeAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> Question.of(WON, RACE_ROLL));
        assertThrows(IllegalArgumentException.class, () -> Question.before(WON).forMoney());
        List<Play> others = Plays.legal(Position.start(), RACE_ROLL);
        assertThrows(IllegalArgumentException.class, () -> Question.of(RACE, RACE_ROLL)
                .only(others));
        assertThrows(IllegalArgumentException.class, () -> Question.before(RACE).only(Plays.legal(RACE, RACE_ROLL)));
        assertThrows(IllegalArgumentException.class, () -> Effort.lookahead(-1));
        assertThrows(IllegalArgumentException.class, () -> Effort.within(Duration.ZERO));
    }
}
