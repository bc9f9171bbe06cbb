package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** Races of a few checkers a side against their exact chances, worked out from the ends for both sides together. */
class FewCheckersTest {
    /** Win chances of the side on roll by recursion, which ends since checkers only move forward. */
    private static final class Exact {
        final SideIndex index;
        final int[][][] results;
        final float[][] wins;
        final PlayGenerator generator = new PlayGenerator();

        Exact(SideIndex index) {
            this.index = index;
            results = new int[index.size()][][];
            wins = new float[index.size()][];
        }

        double win(int mine, int theirs) {
            if (wins[mine] == null) {
                wins[mine] = new float[index.size()];
                Arrays.fill(wins[mine], -1);
            }
            if (wins[mine][theirs] < 0) {
                double win = 0;
                for (Roll roll : Roll.all()) {
                    double best = 0;
                    for (int result : results(mine)[roll.index()]) {
                        best = Math.max(best, result == 0 ? 1 : 1 - win(theirs, result));
                    }
                    win += roll.probability() * best;
                }
                wins[mine][theirs] = (float) win;
            }
            return wins[mine][theirs];
        }

        private int[][] results(int arrangement) {
            if (results[arrangement] == null) {
                int[] planes = new int[Planes.STRIDE];
                index.write(arrangement, planes, 0);
                results[arrangement] = new int[Roll.COUNT][];
                for (Roll roll : Roll.all()) {
                    int count = generator.generate(planes, 0, roll.high(), roll.low());
                    int[] all = new int[count];
                    for (int i = 0; i < count; i++) {
                        all[i] = index.of(generator.results(), i * Planes.STRIDE);
                    }
                    results[arrangement][roll.index()] = all;
                }
            }
            return results[arrangement];
        }
    }

    /** Up to three checkers a side nothing is left of an error; with four each side plays for the fewest rolls. */
    @ParameterizedTest
    @CsvSource({"2, 18, 1e-6, 1e-6", "3, 9, 1e-6, 1e-6", "4, 7, 0.012, 0.004"})
    void chancesOfShortRaces(int checkers, int points, double worst, double usual) {
        Exact exact = new Exact(new SideIndex(points, checkers));
        RaceJudge judge = new RaceJudge(Tables.standard());
        SplittableRandom random = new SplittableRandom(checkers);
        double squares = 0;
        int count = 0;
        while (count < 150) {
            int mine = 1 + random.nextInt(exact.index.size() - 1);
            int theirs = 1 + random.nextInt(exact.index.size() - 1);
            int[] planes = new int[Planes.STRIDE];
            exact.index.write(mine, planes, 0);
            exact.index.write(theirs, planes, Planes.SIDE);
            for (int side = 0; side < Planes.STRIDE; side += Planes.SIDE) {
                for (int n = Planes.checkers(planes, side, ~0); n < Position.FULL; n++) {
                    Planes.add(planes, side, Planes.OFF);
                }
            }
            if (highest(planes, 0) + highest(planes, Planes.SIDE) >= Planes.BAR) {
                continue;
            }
            Position position = Position.ofPlanes(planes, 0);
            double off = judge.outlook(position).outcomes().win() - exact.win(mine, theirs);
            assertEquals(0, off, worst, position.toString());
            squares += off * off;
            count++;
        }
        assertTrue(Math.sqrt(squares / count) < usual, "root mean square " + Math.sqrt(squares / count));
    }

    private static int highest(int[] planes, int at) {
        return Integer.SIZE - 1 - Integer.numberOfLeadingZeros(Planes.occupied(planes, at));
    }

    private static OneSidedTable covering(int checkers, int highest) {
        int[] planes = new int[Planes.SIDE];
        Planes.add(planes, 0, highest);
        for (int n = 1; n < checkers; n++) {
            Planes.add(planes, 0, 1 + n % highest);
        }
        return FewCheckers.covering(planes, 0);
    }

    @Test
    void coversWhatIsQuicklyBuilt() {
        assertNotNull(covering(3, 24));
        assertNotNull(covering(6, 12));
        assertNull(covering(6, 13));
        assertNull(covering(9, 8));
        assertNull(covering(1, Planes.BAR));
        assertEquals(covering(2, 10), covering(2, 12), "one table for both");
        assertEquals(
                Basis.DISTRIBUTIONS,
                RaceOutlook.of(CheckRows.position("0,0,0,0,0,0,0,0,1", "0,0,0,0,0,0,0,1"), Tables.standard())
                        .onRoll()
                        .basis());
    }

    /** What a play that bears the last checker off leaves needs no roll any more. */
    @Test
    void aSideThatHasBorneAllOffNeedsNoRoll() {
        int[] planes = Position.start().toPlanes();
        for (int place = 1; place <= Planes.BAR; place++) {
            while (Planes.count(planes, 0, place) > 0) {
                Planes.remove(planes, 0, place);
                Planes.add(planes, 0, Planes.OFF);
            }
        }
        OneSidedTable table = FewCheckers.covering(planes, 0);
        assertEquals(0, table.mean(table.index().of(planes, 0)), 0);
    }
}
