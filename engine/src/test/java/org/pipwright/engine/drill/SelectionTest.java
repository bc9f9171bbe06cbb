package org.pipwright.engine.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RandomRecords;
import org.pipwright.engine.review.Decision;
import org.pipwright.engine.review.Review;
import org.pipwright.engine.review.ReviewSettings;
import org.pipwright.engine.review.ReviewedTurn;
import org.pipwright.engine.review.Reviews;
import org.pipwright.engine.roll.Roll;

/** Exercises of decisions that are given. Without lookahead a second look finds what the review found. */
class SelectionTest {
    private static final Knowledge KNOWLEDGE = Knowledge.of(LeaningEvaluator::new);

    private static final double COST = 0.05;

    /** Reviewing takes long, and is the same for all tests. */
    private static final Map<Long, Review> REVIEWS = new HashMap<>();

    private static final Map<Long, List<Exercise>> EVERYTHING = new HashMap<>();

    private static Review review(long seed) {
        return REVIEWS.computeIfAbsent(seed, SelectionTest::reviewed);
    }

    /** The exercises of any theme in a record. */
    private static List<Exercise> everything(long seed) {
        return EVERYTHING.computeIfAbsent(
                seed, each -> run(settings(null, 10_000, 1), mistakes(review(each), null), 1));
    }

    private static Review reviewed(long seed) {
        GameRecord record = new RandomRecords(seed).next();
        return new Reviews(KNOWLEDGE, new ReviewSettings(0, 0, 1, true), 1)
                .review(record, WorkFile.NONE, Progress.NONE);
    }

    private static List<Candidate> mistakes(Review review, String player) {
        Mistakes mistakes = new Mistakes(COST, name -> player == null || name.equals(player));
        mistakes.add("record.txt", review);
        return mistakes.costliestFirst();
    }

    private static SelectionSettings settings(Theme theme, int count, int apart) {
        return new SelectionSettings(Optional.ofNullable(theme), count, new Clarity(COST, 1e-9, 0, true), true, apart);
    }

    private static List<Exercise> run(SelectionSettings settings, List<Candidate> candidates, int threads) {
        return new Selection(settings, KNOWLEDGE, (found, of) -> {}).run(candidates, threads);
    }

    /** The decision of a review that an exercise was made of. */
    private static Decision decision(Review review, Exercise exercise) {
        Origin.Recorded at = (Origin.Recorded) exercise.origin();
        ReviewedTurn turn = review.game(at.game() - 1).get(at.turn() - 1);
        assertEquals(turn.moment().position(), exercise.position());
        boolean play = exercise instanceof PlayExercise;
        boolean answer = !play && ((CubeExercise) exercise).answering();
        Decision.Kind kind = play ? Decision.Kind.PLAY : answer ? Decision.Kind.ANSWER : Decision.Kind.DOUBLE;
        Decision decision = turn.decisions().stream()
                .filter(each -> each.kind() == kind)
                .findFirst()
                .orElseThrow();
        assertEquals(review.record().heading().name(decision.side()), at.player());
        return decision;
    }

    private static boolean beaver(Exercise exercise) {
        return exercise instanceof CubeExercise && ((CubeExercise) exercise).best() == CubeAction.BEAVER;
    }

    @ParameterizedTest
    @ValueSource(longs = {1})
    void everyMistakeBecomesAnExerciseOfTheSameCost(long seed) {
        Review review = review(seed);
        List<Candidate> candidates = mistakes(review, null);
        long expected = review.turns().stream()
                .flatMap(turn -> turn.decisions().stream())
                .filter(each -> each.counted() && each.points() <= -COST)
                .count();
        assertTrue(candidates.size() > 10 && candidates.size() <= expected, candidates.size() + " of " + expected);
        List<Exercise> exercises = everything(seed);
        assertTrue(exercises.size() > candidates.size() / 2, exercises.size() + " of " + candidates.size());
        List<Double> costs = new ArrayList<>();
        for (Exercise exercise : exercises) {
            assertFalse(beaver(exercise));
            assertEquals(decision(review, exercise).points(), exercise.cost(), 1e-6);
            costs.add(exercise.cost());
        }
        assertEquals(costs.stream().sorted(Comparator.naturalOrder()).toList(), costs, "the costliest first");
    }

    @Test
    void aPlayersMistakesAreTheirs() {
        Review review = review(2);
        List<String> names = review.record().heading().players();
        int all = mistakes(review, null).size();
        int one = mistakes(review, names.get(0)).size();
        int other = mistakes(review, names.get(1)).size();
        assertTrue(one > 0 && other > 0);
        assertEquals(all, one + other);
        mistakes(review, names.get(1))
                .forEach(each -> assertEquals(names.get(1), ((Origin.Recorded) each.origin()).player()));
    }

    @ParameterizedTest
    @EnumSource(Theme.class)
    void aThemeTakesThoseThatAreAboutIt(Theme theme) {
        List<Exercise> expected = new ArrayList<>();
        List<Exercise> found = new ArrayList<>();
        for (long seed = 1; seed <= 2; seed++) {
            List<Candidate> candidates = mistakes(review(seed), null);
            for (Exercise exercise : everything(seed)) {
                if (about(theme, exercise)) {
                    expected.add(exercise);
                }
            }
            found.addAll(run(settings(theme, 10_000, 1), candidates, 1));
        }
        assertTrue(found.containsAll(expected), theme::word);
        found.forEach(exercise -> assertTrue(about(theme, exercise), exercise::toString));
    }

    private static boolean about(Theme theme, Exercise exercise) {
        if (!theme.comesUpIn(exercise.position()) || theme.cube() != exercise instanceof CubeExercise) {
            return false;
        }
        if (!theme.cube()) {
            return theme.setsApart((PlayExercise) exercise);
        }
        CubeExercise cube = (CubeExercise) exercise;
        if (theme != Theme.MATCH_SCORES) {
            return theme == Theme.TAKES_AND_PASSES ? cube.answering() : !cube.answering() && lesson(cube);
        }
        try (Judge judge = new Judge(KNOWLEDGE, 1)) {
            Question money = Question.before(cube.position()).with(MoneyStakes.USUAL, cube.cube());
            return cube.stakes() instanceof MatchStakes
                    && CubeExercise.right(judge.ask(money, Effort.STATIC).cube(), cube.answering()) != cube.best();
        }
    }

    /** The whole game is open, and there is no gammon to play on for. */
    private static boolean lesson(CubeExercise cube) {
        double win = new LeaningEvaluator().evaluate(cube.position()).win();
        return win >= 0.5 && win <= 0.95 && !cube.values().tooGood();
    }

    @Test
    void threadsDoNotMatterAndFewerAreTheFirstOfMany() {
        List<Candidate> candidates = mistakes(review(1), null);
        List<Exercise> all = run(settings(null, 10_000, 4), candidates, 1);
        assertTrue(all.size() > 5);
        assertEquals(all, run(settings(null, 10_000, 4), candidates, 3));
        assertEquals(all.subList(0, 5), run(settings(null, 5, 4), candidates, 2));
        for (Exercise one : all) {
            for (Exercise other : all) {
                assertTrue(one == other || Likeness.checkersApart(one.position(), other.position()) >= 4);
            }
        }
    }

    /** A file of positions is asked as it is, easy ones and equal ones too. */
    @Test
    void allPositionsAreAskedIfNothingIsSifted() {
        Question play = Question.of(Position.start(), Roll.parse("3-1"));
        Question race =
                Question.before(PositionText.parse("5@3 5@2 5@1 / 15@6")).forMoney();
        List<Candidate> candidates = new ArrayList<>();
        for (Question each : List.of(play, play, race)) {
            candidates.add(Candidate.asked(new Origin.Listed("mine.txt", candidates.size() + 1), each));
        }
        List<Exercise> exercises = run(SelectionSettings.all(3, 0, true), candidates, 2);
        assertEquals(3, exercises.size());
        PlayExercise first = (PlayExercise) exercises.get(0);
        assertEquals(first.ranking().get(1), first.weak());
        assertEquals(new Origin.Listed("mine.txt", 2), exercises.get(1).origin());
        CubeExercise last = (CubeExercise) exercises.get(2);
        assertEquals(last.worse(), last.weak());
        assertFalse(last.answering());
    }

    @Test
    void aStoppedSelectionGivesTheBeginning() {
        List<Candidate> candidates = mistakes(review(1), null);
        StopWhen fromFour = new StopWhen((found, of) -> of >= 4);
        List<Exercise> some = new Selection(settings(null, 10_000, 1), KNOWLEDGE, fromFour).run(candidates, 1);
        assertTrue(fromFour.stopped() && !some.isEmpty() && some.size() <= 4);
        assertEquals(everything(1).subList(0, some.size()), some);
    }
}
