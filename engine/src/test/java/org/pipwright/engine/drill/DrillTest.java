package org.pipwright.engine.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.explain.Telling;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.play.Plays;

/** What a drill finds is what was asked for, whoever searches. */
class DrillTest {
    private static final int COUNT = 4;

    private static final MatchTable TABLE = ShippedMatchTable.load();

    private static DrillSettings settings(Theme theme, int count, long seed) {
        return new DrillSettings(theme, count, seed, new Clarity(0.06, 0.03, theme.cube() ? 0 : 1, true), 5, 4000);
    }

    private static CubeTerms terms(Stakes stakes) {
        return stakes instanceof MoneyStakes
                ? new MoneyTerms((MoneyStakes) stakes, null)
                : new MatchTerms((MatchStakes) stakes, TABLE);
    }

    private static Drill drill(DrillSettings settings, DrillListener listener) {
        Entrant weaker = Baselines.named("racer").orElseThrow();
        return new Drill(settings, Knowledge.of(LeaningEvaluator::new), weaker, listener);
    }

    private static List<Exercise> run(DrillSettings settings, int threads) {
        return drill(settings, (found, games) -> {}).run(threads);
    }

    @ParameterizedTest
    @EnumSource(Theme.class)
    void whatIsFoundIsWhatWasAskedFor(Theme theme) {
        DrillSettings settings = settings(theme, COUNT, 1);
        List<Exercise> questions = run(settings, 1);
        assertEquals(COUNT, questions.size());
        Set<Long> games = new HashSet<>();
        for (Exercise question : questions) {
            assertTrue(theme.comesUpIn(question.position()));
            assertTrue(-question.cost() >= settings.clarity().cost(), question::toString);
            assertTrue(question.margin() >= settings.clarity().margin(), question::toString);
            assertTrue(-question.cost() >= question.margin(), "nothing is better than the second best");
            assertTrue(games.add(((Origin.OwnGame) question.origin()).number()));
            for (Exercise other : questions) {
                assertTrue(question == other
                        || Likeness.checkersApart(question.position(), other.position()) >= settings.apart());
            }
            if (theme.cube()) {
                checkCube(theme, (CubeExercise) question);
            } else {
                checkPlays(theme, (PlayExercise) question);
            }
        }
    }

    /** Every play to full depth again, nothing pruned. */
    private static void checkPlays(Theme theme, PlayExercise question) {
        try (Judge judge = new Judge(Knowledge.of(LeaningEvaluator::new), 1)) {
            Question all = Question.of(question.position(), question.roll())
                    .only(Plays.legal(question.position(), question.roll()));
            List<PlayVerdict> ranking = judge.ask(all, Effort.lookahead(1)).plays();
            assertEquals(ranking.get(0).play(), question.best().play());
            assertEquals(ranking.get(1).cost(), -question.margin(), 1e-6);
            PlayVerdict weak = ranking.stream()
                    .filter(each -> each.play().equals(question.weak().play()))
                    .findFirst()
                    .orElseThrow();
            assertEquals(weak.cost(), question.cost(), 1e-6);
            assertEquals(ranking.size(), question.ranking().size());
            assertTrue(ranking.size() >= 4, "little to choose");
            assertTrue(
                    new Why(judge, Telling.EVERYTHING, Progress.NONE)
                            .of(question)
                            .about(theme),
                    "the reason is about something else");
            assertTrue(
                    Math.max(question.position().count(25), question.position().opponentCount(25)) <= 3);
            assertTrue(question.margin() <= 0.03 + 0.3, "a plain answer");
            assertTrue(theme.setsApart(
                    question.position(),
                    ranking.get(0).play().result(),
                    weak.play().result()));
        }
    }

    private static void checkCube(Theme theme, CubeExercise question) {
        CubeTerms terms = terms(question.stakes());
        CubeOpinion opinion = CubeOpinion.of(new LeaningEvaluator(), 0);
        assertEquals(opinion.values(question.position(), question.cube(), terms), question.values());
        assertEquals(0, question.cost(question.best()));
        assertEquals(-question.cost(), question.margin(), "there are two choices");
        assertEquals(theme == Theme.MATCH_SCORES, question.stakes() instanceof MatchStakes);
        assertTrue(question.answering() ? theme != Theme.RACE_DOUBLES : theme != Theme.TAKES_AND_PASSES);
        assertTrue(question.margin() <= 0.03 + 0.3, "a plain answer");
        if (theme == Theme.RACE_DOUBLES) {
            double win = new LeaningEvaluator().evaluate(question.position()).win();
            assertTrue(win >= 0.5 && win <= 0.95, "nothing to decide at " + win);
            assertFalse(question.values().tooGood());
        }
        double doubling = -question.cost(CubeAction.DOUBLE);
        assertTrue(doubling <= (question.answering() ? 0.1 : 0.4));
        if (theme == Theme.MATCH_SCORES) {
            CubeAction forMoney = CubeExercise.right(
                    opinion.values(question.position(), question.cube(), terms(MoneyStakes.USUAL)),
                    question.answering());
            assertNotEquals(forMoney, question.best());
        }
    }

    /** The weaker player's own opinion once more. */
    @Test
    void theMistakesAreThoseOfTheWeakerPlayer() {
        for (Exercise question : run(settings(Theme.TAKES_AND_PASSES, COUNT, 2), 1)) {
            CubeExercise asked = (CubeExercise) question;
            CubeAction theirs = CubeOpinion.byPips()
                    .values(asked.position(), asked.cube(), terms(asked.stakes()))
                    .answer();
            assertEquals(theirs, asked.weak());
            assertNotEquals(asked.best(), asked.weak());
        }
    }

    @ParameterizedTest
    @EnumSource(names = {"HITTING", "TAKES_AND_PASSES"})
    void threadsDoNotMatter(Theme theme) {
        DrillSettings settings = settings(theme, COUNT, 3);
        List<Exercise> alone = run(settings, 1);
        assertEquals(alone, run(settings, 2));
        assertEquals(alone, run(settings, 5));
    }

    @Test
    void theSeedDecides() {
        List<Exercise> one = run(settings(Theme.OPENING, COUNT, 1), 2);
        assertEquals(one, run(settings(Theme.OPENING, COUNT, 1), 2));
        assertNotEquals(one, run(settings(Theme.OPENING, COUNT, 2), 2));
        assertEquals(one.subList(0, 2), run(settings(Theme.OPENING, 2, 1), 2), "fewer are the first of many");
    }

    /** With a large distance the sheet must skip questions that a smaller one takes. */
    @Test
    void nearlyEqualPositionsAreLeftOut() {
        DrillSettings near = new DrillSettings(Theme.OPENING, 8, 1, new Clarity(0.06, 0.03, 1, true), 1, 4000);
        DrillSettings far = new DrillSettings(Theme.OPENING, 8, 1, new Clarity(0.06, 0.03, 1, true), 6, 4000);
        List<Exercise> all = run(near, 2);
        List<Exercise> some = run(far, 2);
        assertNotEquals(all, some);
        List<Exercise> expected = new ArrayList<>();
        for (Exercise question : all) {
            if (expected.stream().allMatch(e -> Likeness.checkersApart(e.position(), question.position()) >= 6)) {
                expected.add(question);
            }
        }
        assertEquals(expected, some.subList(0, expected.size()));
    }

    @Test
    void aStoppedDrillGivesTheBeginning() {
        DrillSettings settings = settings(Theme.HITTING, 40, 1);
        List<Exercise> some =
                drill(settings, new StopWhen((found, games) -> found >= 3)).run(2);
        assertTrue(some.size() >= 3 && some.size() < 40, "found " + some.size());
        assertEquals(run(settings, 1).subList(0, some.size()), some);
    }

    @Test
    void givesUpAfterMostGames() {
        DrillSettings settings = new DrillSettings(Theme.PRIMING, 5, 1, new Clarity(3, 2, 1, true), 4, 20);
        List<Long> told = new ArrayList<>();
        assertEquals(
                List.of(), drill(settings, (found, games) -> told.add(games)).run(2));
        assertEquals(List.of(16L, 20L), told);
    }

    /** Never to hit would be as easy to guess. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void halfOfTheBestPlaysHit(long seed) {
        List<Exercise> found = run(settings(Theme.HITTING, COUNT, seed), 2);
        long hitting = found.stream()
                .map(question -> (PlayExercise) question)
                .filter(question -> question.best().play().result().opponentCount(25)
                        > question.position().opponentCount(25))
                .count();
        assertTrue(
                hitting <= (COUNT + 1) / 2 && found.size() - hitting <= (COUNT + 1) / 2,
                hitting + " of " + found.size());
    }

    /** A third of a sheet at most. */
    @Test
    void sheetsTeachMoreThanOneThing() {
        Map<String, Integer> lessons = new HashMap<>();
        List<Exercise> found = run(settings(Theme.HITTING, 12, 5), 2);
        try (Judge judge = new Judge(Knowledge.of(LeaningEvaluator::new), 1)) {
            for (Exercise question : found) {
                PlayExercise play = (PlayExercise) question;
                lessons.merge(
                        new Why(judge, Telling.EVERYTHING, Progress.NONE)
                                .of(play)
                                .lesson(play),
                        1,
                        Integer::sum);
            }
        }
        assertTrue(found.size() > 4 && lessons.values().stream().allMatch(times -> times <= 4), lessons::toString);
    }

    /** On a sheet whose answers are all alike nobody has to think. */
    @ParameterizedTest
    @EnumSource(names = {"RACE_DOUBLES", "TAKES_AND_PASSES", "MATCH_SCORES"})
    void answersOfTheCubeDiffer(Theme theme) {
        Map<CubeAction, Integer> answers = new EnumMap<>(CubeAction.class);
        run(settings(theme, 5, 4), 2)
                .forEach(question -> answers.merge(((CubeExercise) question).best(), 1, Integer::sum));
        assertEquals(5, answers.values().stream().mapToInt(n -> n).sum());
        assertTrue(answers.size() > 1 && answers.values().stream().allMatch(n -> n <= 3), answers::toString);
    }

    /** A position may take long. */
    @Test
    void itStopsInTheMidstOfAPosition() {
        int[] asked = new int[1];
        StopWhen told = new StopWhen((found, games) -> false);
        PositionEvaluator stopping = new PositionEvaluator() {
            private final PositionEvaluator evaluator = new LeaningEvaluator();

            private void count() {
                if (++asked[0] == 1000) {
                    told.stop();
                }
            }

            @Override
            public void evaluate(int[] planes, int at, float[] out, int outAt) {
                count();
                evaluator.evaluate(planes, at, out, outAt);
            }

            @Override
            public void evaluateResults(int[] parent, int parentAt, int[] results, int count, float[] out) {
                count();
                evaluator.evaluateResults(parent, parentAt, results, count, out);
            }
        };
        Entrant weaker = Baselines.named("racer").orElseThrow();
        new Drill(settings(Theme.HITTING, 200, 1), Knowledge.of(() -> stopping), weaker, told).run(1);
        assertEquals(1000, asked[0]);
    }
}
