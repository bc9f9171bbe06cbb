package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collection;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.evaluation.RoughEvaluator;
import org.pipwright.engine.evaluation.StoppableEvaluator;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaivePlayGenerator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.regime.Source;

class ExactFirstEvaluatorTest {
    @TempDir
    Path temporary;

    private final EndgameTables tables = Tables.standard();

    /** Chances that depend on the position only, so that a mixed-up group shows. */
    private static final PositionEvaluator HASHED = (planes, at, out, outAt) -> {
        SplittableRandom random = new SplittableRandom(Arrays.hashCode(Arrays.copyOfRange(planes, at, at + 8)));
        float win = (float) random.nextDouble();
        Arrays.fill(out, outAt, outAt + Outcomes.COUNT, 0);
        out[outAt] = win;
        out[outAt + 3] = 1 - win;
    };

    /** Siblings together must give what each gives alone, in every regime and size of game. */
    @ParameterizedTest
    @EnumSource(Source.class)
    void siblingsTogetherAndAlone(Source source) {
        SplittableRandom random = new SplittableRandom(source.ordinal());
        ExactFirstEvaluator evaluator = new ExactFirstEvaluator(tables, HASHED);
        PlayGenerator generator = new PlayGenerator();
        for (int n = 0; n < 300; n++) {
            int[] planes = source.sample(random).toPlanes();
            int high = 1 + random.nextInt(6);
            int count = generator.generate(planes, 0, high, 1 + random.nextInt(high));
            float[] together = new float[count * Outcomes.COUNT];
            evaluator.evaluateResults(planes, 0, generator.results(), count, together);
            assertArrayEquals(alone(evaluator, generator, count), together);
        }
    }

    /** The tables go before the quick evaluator as they go before the one that judges. */
    @Test
    void theQuickEvaluatorKnowsTheTablesToo() {
        RoughEvaluator rough = new RoughEvaluator(3, null);
        PositionEvaluator both =
                new StoppableEvaluator(new ExactFirstEvaluator(tables, new RoughEvaluator(4, rough)), () -> false);
        PositionEvaluator expected = new ExactFirstEvaluator(tables, new RoughEvaluator(3, null));
        assertSame(both.quick(), both.quick().quick());
        assertSame(expected, expected.quick());
        SplittableRandom random = new SplittableRandom(5);
        PlayGenerator generator = new PlayGenerator();
        for (Source source : Source.values()) {
            int[] planes = source.sample(random).toPlanes();
            int count = generator.generate(planes, 0, 5, 2);
            float[] first = new float[count * Outcomes.COUNT];
            float[] same = new float[count * Outcomes.COUNT];
            both.quick().evaluateResults(planes, 0, generator.results(), count, first);
            expected.evaluateResults(planes, 0, generator.results(), count, same);
            assertArrayEquals(same, first);
        }
        assertTrue(rough.asked() > 0);
    }

    private static float[] alone(PositionEvaluator evaluator, PlayGenerator generator, int count) {
        float[] out = new float[count * Outcomes.COUNT];
        int[] child = new int[Planes.STRIDE];
        for (int i = 0; i < count; i++) {
            if (!FinishedGames.write(generator.results(), i * Planes.STRIDE, out, i * Outcomes.COUNT)) {
                Planes.copySwapped(generator.results(), i * Planes.STRIDE, child, 0);
                evaluator.evaluate(child, 0, out, i * Outcomes.COUNT);
                Chances.swap(out, i * Outcomes.COUNT);
            }
        }
        return out;
    }

    /** The best of the ranked results wins as often as the best that the naive generator finds, by the exact table. */
    @Test
    void rankingIsOptimalWhereTheTableCovers() {
        SplittableRandom random = new SplittableRandom(3);
        ExactFirstEvaluator evaluator = new ExactFirstEvaluator(tables, HASHED);
        TwoSidedTable table = tables.twoSided();
        PlayGenerator generator = new PlayGenerator();
        for (int n = 0; n < 4000; n++) {
            int[] planes = new int[Planes.STRIDE];
            table.index().write(1 + random.nextInt(table.index().size() - 1), planes, 0);
            table.index().write(1 + random.nextInt(table.index().size() - 1), planes, Planes.SIDE);
            Planes.add(planes, 0, Planes.OFF);
            Planes.add(planes, Planes.SIDE, Planes.OFF);
            int high = 1 + random.nextInt(6);
            int low = 1 + random.nextInt(high);
            int count = generator.generate(planes, 0, high, low);
            float[] chances = new float[count * Outcomes.COUNT];
            evaluator.evaluateResults(planes, 0, generator.results(), count, chances);
            int best = 0;
            for (int i = 1; i < count; i++) {
                best = Chances.equity(chances, i * 6) > Chances.equity(chances, best * 6) ? i : best;
            }
            int[] chosen = Arrays.copyOfRange(generator.results(), 8 * best, 8 * best + 8);
            Collection<NaiveBoard> all = NaivePlayGenerator.generate(NaiveBoard.ofPlanes(planes, 0), high, low)
                    .results();
            double most = all.stream()
                    .mapToDouble(board -> win(table, board.toPlanes()))
                    .max()
                    .orElseThrow();
            assertEquals(most, win(table, chosen), 1e-7);
        }
    }

    /** Chance of the side that has just played to win. */
    private static double win(TwoSidedTable table, int[] result) {
        int mine = table.index().of(result, 0);
        return mine == 0
                ? 1
                : 1 - table.value(table.index().of(result, Planes.SIDE), mine).win();
    }

    @Test
    void basisOfPositions() {
        assertEquals(Basis.EXACT, basis("6@1 / 6@6"));
        assertEquals(Basis.DISTRIBUTIONS, basis("7@1 / 6@6"));
        assertEquals(Basis.DISTRIBUTIONS, basis("15@6 / 15@6"));
        assertEquals(Basis.DISTRIBUTIONS, basis("3@1 / 2@6 of 3"));
        assertEquals(Basis.ESTIMATED, basis("15@6 / 1@7"));
        assertEquals(Basis.ESTIMATED, basis("1@7 / 15@6"));
        assertEquals(Basis.ESTIMATED, basis("start"));
        assertEquals(Basis.ESTIMATED, basis("1@bar / 1@1"));
    }

    private Basis basis(String text) {
        return tables.basis(PositionText.parse(text).toPlanes(), 0);
    }

    /** A table of all 24 points must leave contact and possible backgammons alone. */
    @Test
    void wideTablesLeaveContactAlone() {
        EndgameTables wide = EndgameTables.of(Tables.oneSided(24, 2), Tables.twoSided());
        assertEquals(
                Basis.DISTRIBUTIONS,
                wide.basis(PositionText.parse("2@15 / 2@9 of 2").toPlanes(), 0));
        assertEquals(
                Basis.ESTIMATED,
                wide.basis(PositionText.parse("2@15 / 2@11 of 2").toPlanes(), 0));
        assertEquals(
                Basis.ESTIMATED,
                wide.basis(PositionText.parse("2@19 / 2@1 of 2").toPlanes(), 0));
        assertEquals(
                Basis.DISTRIBUTIONS,
                wide.basis(PositionText.parse("1@19 / 2@1 of 2").toPlanes(), 0));
    }

    @Test
    void horizonsEndGamesAtTheirTable() {
        TableHorizon exact = new TableHorizon(tables, Basis.EXACT);
        TableHorizon wide = new TableHorizon(tables, Basis.DISTRIBUTIONS);
        float[] out = new float[7];
        assertTrue(exact.write(PositionText.parse("1@6 / 1@6").toPlanes(), 0, out, 1));
        assertArrayEquals(new float[] {0, 0.8125f, 0, 0, 0.1875f, 0, 0}, out, 1e-6f);
        int[] larger = PositionText.parse("2@1 / 15@6").toPlanes();
        assertFalse(exact.write(larger, 0, out, 1));
        assertTrue(wide.write(larger, 0, out, 1));
        assertArrayEquals(new float[] {0, 0, 1, 0, 0, 0, 0}, out, 0);
        int[] start = Position.start().toPlanes();
        assertFalse(wide.write(start, 0, out, 1));
    }

    @Test
    void nothingIsBuiltWithoutNeed() {
        TableListener refusing = new TableListener() {
            @Override
            public void note(String line) {
                throw new AssertionError(line);
            }

            @Override
            public TableProgress building(String table) {
                throw new AssertionError(table);
            }
        };
        EndgameTables lazy = EndgameTables.standard(new TableFolder(temporary), 1, refusing);
        ExactFirstEvaluator evaluator = new ExactFirstEvaluator(lazy, HASHED);
        evaluator.evaluate(Position.start());
        evaluator.evaluate(PositionText.parse("15@6 / 15@7"));
        PlayGenerator generator = new PlayGenerator();
        int count = generator.generate(Position.start().toPlanes(), 0, 3, 1);
        evaluator.evaluateResults(
                Position.start().toPlanes(), 0, generator.results(), count, new float[count * Outcomes.COUNT]);
        assertEquals(0, temporary.toFile().list().length);
    }

    @Test
    void theLargestTablesOfAFolderAreTaken() {
        TableFolder folder = new TableFolder(temporary);
        assertEquals(6, EndgameTables.largest(folder, 1, TableListener.SILENT).points());
        assertEquals(0, temporary.toFile().list().length, "nothing is built before it is needed");
    }
}
