package org.pipwright.engine.reduced;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** The exact value of a policy: forward visits against plain policy evaluation backwards. */
class PolicyValueTest {
    private static ReducedTable one;
    private static ReducedTable two;

    @BeforeAll
    static void solve() {
        one = ReducedSolver.solve(new ReducedGame(1), 1, 1e-13, ReducedSolver.Progress.NONE);
        two = SolvedGames.two();
    }

    @Test
    void bestPlayLosesNothing() {
        ReducedOutcomes exact = ReducedOutcomes.of(two, 2, ReducedSolver.Progress.NONE);

        PolicyValue value = PolicyValue.of(two, () -> exact, 2);

        assertEquals(0, value.lostPerGame(), 1e-5);
        assertEquals(0.1133299673, value.equityStarting(), 2e-5);
        assertEquals(-0.1133299673, value.equitySecond(), 2e-5);
        assertTrue(value.everywhere().mean() < 2e-6, value::toString);
        assertTrue(value.visited().p99() < 2e-5, value::toString);
    }

    @Test
    void hastyPlayIsWorthWhatPlainPolicyEvaluationSays() {
        PolicyValue value = PolicyValue.of(one, HastyEvaluator::new, 1);
        double[] plain = plainValues(one);

        assertTrue(value.lostPerGame() > 0.001, value::toString);
        assertEquals(plain[0], value.equityStarting(), 1e-9);
        assertEquals(plain[1], value.equitySecond(), 1e-9);
        assertEquals(-(plain[0] + plain[1]) / 2, value.lostPerGame(), 1e-9);
        assertEquals(value, PolicyValue.of(one, HastyEvaluator::new, 3));
    }

    @Test
    void forwardAndBackwardAgreeWithTwoCheckers() {
        PolicyValue value = PolicyValue.of(two, HastyEvaluator::new, 2);
        double[] backward = backward(two, NetJudgement.of(two.game(), HastyEvaluator::new, 2));

        assertTrue(value.lostPerGame() > 0.05, value::toString);
        assertEquals(backward[0], value.equityStarting(), 1e-9);
        assertEquals(backward[1], value.equitySecond(), 1e-9);
    }

    @Test
    void choicesAreThoseOfThePlayer() {
        ReducedGame game = two.game();
        NetJudgement net = NetJudgement.of(game, HastyEvaluator::new, 2);
        Followers followers = new Followers(game, net.choices());
        EvaluatingPlayer player = new EvaluatingPlayer(new HastyEvaluator());
        SplittableRandom random = new SplittableRandom(8);
        for (int i = 0; i < 10_000; i++) {
            Position position = PlayByPlay.random(game, random);
            Roll roll = Roll.all().get(random.nextInt(Roll.COUNT));
            int cell = game.cell(position);
            int size = game.sides().size();
            Rows rows = new Rows(game.sides(), cell % size);
            int chosen = followers.cell(rows, cell / size, cell % size, roll.index());
            assertEquals(game.cell(next(player, position, roll)), chosen, () -> position + " " + roll);
        }
    }

    @Test
    void errorsAreThoseOfEveryPosition() {
        PolicyValue value = PolicyValue.of(one, HastyEvaluator::new, 1);
        HastyEvaluator evaluator = new HastyEvaluator();
        double[] errors = IntStream.range(0, one.game().cells())
                .filter(one.game()::unfinished)
                .mapToObj(cell -> PlayByPlay.position(one.game(), cell))
                .mapToDouble(p -> Math.abs(evaluator.evaluate(p).equity() - one.equity(p)))
                .sorted()
                .toArray();

        double mean = Arrays.stream(errors).average().orElseThrow();
        assertEquals(mean, value.everywhere().mean(), 1e-6);
        assertEquals(
                errors[(int) Math.ceil(0.99 * errors.length) - 1],
                value.everywhere().p99(),
                2e-5);
    }

    private static Position next(EvaluatingPlayer player, Position position, Roll roll) {
        PlayGenerator generator = new PlayGenerator();
        generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
        int chosen = player.choose(position.toPlanes(), 0, generator, null);
        return Position.ofPlanes(generator.results(), chosen * Planes.STRIDE).swapped();
    }

    /** Values of the policy starting and second, to the policy, one position at a time with the full game's generator. */
    private static double[] plainValues(ReducedTable table) {
        ReducedGame game = table.game();
        EvaluatingPlayer hasty = new EvaluatingPlayer(new HastyEvaluator());
        ExactEquities best = new ExactEquities(table);
        int[][] hastyNext = new int[game.cells()][Roll.COUNT];
        int[][] bestNext = new int[game.cells()][Roll.COUNT];
        for (int cell = 0; cell < game.cells(); cell++) {
            if (game.unfinished(cell)) {
                Position position = PlayByPlay.position(game, cell);
                for (Roll roll : Roll.all()) {
                    hastyNext[cell][roll.index()] = game.cell(next(hasty, position, roll));
                    bestNext[cell][roll.index()] = game.cell(best.next(position, roll));
                }
            }
        }
        double[] own = game.freshValues();
        double[] others = game.freshValues();
        for (int sweep = 0; sweep < 300; sweep++) {
            double[] nextOwn = own.clone();
            double[] nextOthers = others.clone();
            for (int cell = 0; cell < game.cells(); cell++) {
                if (game.unfinished(cell)) {
                    nextOwn[cell] = 0;
                    nextOthers[cell] = 0;
                    for (Roll roll : Roll.all()) {
                        nextOwn[cell] -= roll.probability() * others[hastyNext[cell][roll.index()]];
                        nextOthers[cell] -= roll.probability() * own[bestNext[cell][roll.index()]];
                    }
                }
            }
            own = nextOwn;
            others = nextOthers;
        }
        Position start = Position.start(game.checkers());
        double starting = 0;
        double second = 0;
        for (Roll roll : Roll.opening()) {
            starting -= others[game.cell(next(hasty, start, roll))] / 15;
            second += own[game.cell(best.next(start, roll))] / 15;
        }
        return new double[] {starting, second};
    }

    /** The same with play lists, backwards: what is still lost from each cell on. */
    private static double[] backward(ReducedTable table, NetJudgement net) {
        ReducedGame game = table.game();
        Followers policy = new Followers(game, net.choices());
        Followers best = new Followers(game, table.choices());
        double[] own = game.freshValues();
        double[] others = game.freshValues();
        try (Sweeper sweeper = new Sweeper(game.sides(), 2)) {
            double change = 1;
            while (change > 1e-13) {
                change = sweeper.ascending((opponent, from, to) -> {
                    Rows rows = new Rows(game.sides(), opponent);
                    double largest = 0;
                    for (int me = from; me < to; me++) {
                        if (game.playable(me, opponent)) {
                            int cell = game.cell(me, opponent);
                            double first = 0;
                            double second = 0;
                            for (Roll roll : Roll.all()) {
                                int index = roll.index();
                                first -= roll.probability() * others[policy.cell(rows, me, opponent, index)];
                                second -= roll.probability() * own[best.cell(rows, me, opponent, index)];
                            }
                            largest = Math.max(largest, Math.abs(first - own[cell]) + Math.abs(second - others[cell]));
                            own[cell] = first;
                            others[cell] = second;
                        }
                    }
                    return largest;
                });
            }
        }
        int start = game.cell(Position.start(game.checkers()));
        int size = game.sides().size();
        Rows rows = new Rows(game.sides(), start % size);
        double starting = 0;
        double second = 0;
        for (Roll roll : Roll.opening()) {
            starting -= others[policy.cell(rows, start / size, start % size, roll.index())] / 15;
            second += own[best.cell(rows, start / size, start % size, roll.index())] / 15;
        }
        return new double[] {starting, second};
    }
}
