package org.pipwright.engine.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.play.RandomWalk;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.score.MatchScore;

/** Columns of worth with pruning, against a recursion that knows a single one at a time. */
class ColumnsTest {
    private static final Model MODEL = RandomModels.of(5, 16, 8);
    private static final MatchTable TABLE = ShippedMatchTable.load();
    private static final LookaheadSettings TIGHT =
            new LookaheadSettings(List.of(new Pruning(0.1f, 4)), List.of(new Pruning(0.05f, 3), new Pruning(0.02f, 2)));

    private static CubeTerms terms(Stakes stakes) {
        return stakes instanceof MoneyStakes
                ? new MoneyTerms((MoneyStakes) stakes, null)
                : new MatchTerms((MatchStakes) stakes, TABLE);
    }

    private static ParallelLookahead search(int threads) {
        return new ParallelLookahead(
                () -> Judgement.by(new NetworkEvaluator(MODEL)),
                () -> ColumnsTest::terms,
                TIGHT,
                threads,
                ParallelLookahead.memory(),
                () -> false);
    }

    /** One column, straight from the definition: what rolling with a cube is worth. */
    private static final class Single {
        private final PositionEvaluator evaluator = new NetworkEvaluator(MODEL);

        /** Value to the side on roll of rolling with a cube. */
        double rolling(Position position, CubeState cube, CubeTerms terms, int lookahead) {
            double sum = 0;
            for (Roll roll : Roll.all()) {
                sum += roll.ways() * best(Plays.legal(position, roll), cube, terms, lookahead - 1);
            }
            return sum / 36;
        }

        private double best(List<Play> plays, CubeState cube, CubeTerms terms, int lookahead) {
            List<Play> left = new ArrayList<>(plays);
            for (int reached = 0; reached < lookahead; reached++) {
                left = pruned(left, cube, terms, reached);
            }
            return left.stream()
                    .mapToDouble(play -> worth(play, cube, terms, lookahead))
                    .max()
                    .orElseThrow();
        }

        private List<Play> pruned(List<Play> plays, CubeState cube, CubeTerms terms, int reached) {
            Pruning pruning = TIGHT.inner().get(Math.min(reached, TIGHT.inner().size() - 1));
            double best = plays.stream()
                    .mapToDouble(play -> worth(play, cube, terms, reached))
                    .max()
                    .orElseThrow();
            double least = best - pruning.within() * terms.point(cube);
            return plays.stream()
                    .filter(play -> worth(play, cube, terms, reached) >= least)
                    .sorted(Comparator.comparingDouble(play -> -worth(play, cube, terms, reached)))
                    .limit(pruning.most())
                    .toList();
        }

        /** What a play leaves its maker: the game won, or what the opponent's best cube action leaves. */
        private double worth(Play play, CubeState cube, CubeTerms terms, int lookahead) {
            Position next = play.next();
            if (next.finished()) {
                return terms.won(GameResult.of(next), cube);
            }
            CubeTerms theirs = terms.swapped();
            CubeState seen = cube.swapped();
            if (lookahead == 0) {
                return terms.toOther(theirs.best(next, evaluator.evaluate(next), seen));
            }
            double roll = rolling(next, seen, theirs, lookahead);
            if (!theirs.stakes().mayDouble(seen)) {
                return terms.toOther(roll);
            }
            double take = theirs.ofTaken(rolling(next, seen.taken(), theirs, lookahead));
            if (theirs.stakes().mayBeaver(seen)) {
                take = Math.min(take, 4 * rolling(next, seen.beavered(), theirs, lookahead));
            }
            return terms.toOther(Math.max(roll, Math.min(take, theirs.won(GameResult.SINGLE, seen))));
        }
    }

    static Stream<Stakes> stakes() {
        return Stream.of(
                MoneyStakes.USUAL,
                new MoneyStakes(false, true),
                new MatchStakes(new MatchScore(4, 2, false)),
                new MatchStakes(new MatchScore(2, 1, true)),
                new MatchStakes(new MatchScore(11, 9, false)));
    }

    @ParameterizedTest
    @MethodSource("stakes")
    void everyColumnIsWhatItIsAlone(Stakes stakes) {
        Single alone = new Single();
        CubeTerms terms = terms(stakes);
        int compared = 0;
        for (int checkers = 1; checkers <= 3; checkers++) {
            for (Position position : new RandomWalk(checkers, 31 + checkers).next(checkers == 3 ? 1 : 3)) {
                for (CubeState cube :
                        List.of(CubeState.START, new CubeState(2, CubeOwner.ME), new CubeState(4, CubeOwner.THEM))) {
                    try (ParallelLookahead search = search(1)) {
                        double found = search.evaluate(position, cube, terms, 2)
                                .values()
                                .noDouble();
                        assertEquals(alone.rolling(position, cube, terms, 2), found, 1e-6, position + " " + cube);
                        compared++;
                    }
                }
            }
        }
        assertEquals(21, compared);
    }

    /** The chances beside a cube are those of a search without one, bit for bit. */
    @ParameterizedTest
    @MethodSource("stakes")
    void theCubeChangesNoChances(Stakes stakes) {
        CubeTerms terms = terms(stakes);
        try (ParallelLookahead with = search(2);
                ParallelLookahead without = search(1)) {
            for (Position position : new RandomWalk(15, 71).next(3)) {
                for (int lookahead = 0; lookahead <= 2; lookahead++) {
                    Outcomes expected = without.evaluate(position.toPlanes(), lookahead);
                    assertEquals(
                            expected,
                            with.evaluate(position, CubeState.START, terms, lookahead)
                                    .outcomes());
                }
            }
        }
    }

    /** Every number of threads, and every state of the memory, finds the same. */
    @ParameterizedTest
    @CsvSource({"1, 2", "2, 2", "2, 3"})
    void threadsAndMemoryChangeNothing(int lookahead, int threads) {
        RandomWalk walk = new RandomWalk(15, 73);
        PlayGenerator generator = new PlayGenerator();
        Stakes match = new MatchStakes(new MatchScore(5, 3, false));
        int deep = 0;
        try (ParallelLookahead used = search(threads)) {
            for (int i = 0; i < 4; i++) {
                int[] planes = walk.next().toPlanes();
                Roll roll = walk.roll();
                int count = generator.generate(planes, 0, roll.high(), roll.low());
                Stakes stakes = i % 2 == 0 ? match : MoneyStakes.USUAL;
                Choice choice = new Choice(planes, generator.results(), count, stakes, CubeState.START);
                used.search(choice, 1);
                List<Searched> found = used.search(choice, lookahead);
                try (ParallelLookahead fresh = search(1)) {
                    assertEquals(fresh.search(choice, lookahead), found);
                }
                deep += (int) found.stream()
                        .filter(each -> each.lookahead() == lookahead)
                        .count();
            }
        }
        assertTrue(deep > 4, "plays looked at in full: " + deep);
    }
}
