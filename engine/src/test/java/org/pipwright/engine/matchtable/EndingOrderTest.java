package org.pipwright.engine.matchtable;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;

/** What the solver of match endings leaves out is never better, and is most of what there is. */
class EndingOrderTest {
    private static final SideIndex INDEX = EndgameTables.LAST_SIX;
    private static final ProvenPlays PLAYS = new ProvenPlays(INDEX);

    private static final MatchTable TABLE = ShippedMatchTable.load();

    private final EndingOrder order = PLAYS.order();

    private static int side(String text) {
        return INDEX.of(PositionText.parse(text + " / 1@1").toPlanes(), 0);
    }

    private static List<Integer> points(int arrangement) {
        int[] planes = new int[Planes.SIDE];
        INDEX.write(arrangement, planes, 0);
        List<Integer> points = new ArrayList<>();
        for (int point = 1; point <= 6; point++) {
            points.addAll(Collections.nCopies(Planes.count(planes, 0, point), point));
        }
        return points;
    }

    /** Fewer pips on as many checkers, and yet each of the two wins more often against something. */
    @Test
    void pipsProveNothing() {
        assertFalse(order.atLeast(side("1@6 3@1"), side("1@6 1@2 2@1")));
        assertTrue(order.atLeast(side("1@1"), side("1@2")));
        assertFalse(order.atLeast(side("1@5"), side("1@2")));
        assertTrue(order.atLeast(0, side("1@1")));
        assertFalse(order.atLeast(side("1@1"), 0));
    }

    @Test
    void theBetterIsWorthAtLeastAsMuch() {
        SplittableRandom random = new SplittableRandom(5);
        NaiveEndings naive = new NaiveEndings(TABLE);
        int proved = 0;
        for (int i = 0; i < 400; i++) {
            // Up to two checkers: 28 arrangements, the ones that plain recursion has time for.
            int one = 1 + random.nextInt(27);
            int other = 1 + random.nextInt(27);
            if (order.atLeast(one, other)) {
                proved++;
                List<Integer> against = points(1 + random.nextInt(27));
                MatchScore score = new MatchScore(1 + random.nextInt(6), 2 + random.nextInt(5), false);
                char owner = "cmt".charAt(random.nextInt(3));
                int value = owner == 'c' ? 1 : 2;
                double better = naive.best(points(one), against, score, value, owner);
                double worse = naive.best(points(other), against, score, value, owner);
                assertTrue(better >= worse - 1e-12, points(one) + ", " + points(other) + " against " + against);
            }
        }
        assertTrue(proved > 100, proved + " pairs in order");
    }

    /** Everything left out has something at least as good beside it, and two of three results are left out. */
    @Test
    void whatIsKeptIsEnough() {
        PlayGenerator generator = new PlayGenerator();
        int[] planes = new int[Planes.STRIDE];
        long all = 0;
        long kept = 0;
        for (int arrangement = 1; arrangement < INDEX.size(); arrangement += 7) {
            INDEX.write(arrangement, planes, 0);
            for (Roll roll : Roll.all()) {
                int[] best = PLAYS.of(arrangement)[roll.index()];
                int count = generator.generate(planes, 0, roll.high(), roll.low());
                all += count;
                kept += best.length;
                for (int i = 0; i < count; i++) {
                    int result = INDEX.of(generator.results(), i * Planes.STRIDE);
                    boolean covered = false;
                    for (int good : best) {
                        covered |= order.atLeast(good, result);
                    }
                    assertTrue(covered, points(arrangement) + " with " + roll + " to " + points(result));
                }
            }
        }
        assertTrue(2 * kept < all, kept + " of " + all);
    }

    /**
     * The file that comes with the program is what is worked out here, byte for byte; -Dpipwright.test.endings=write makes it
     * anew.
     */
    @Test
    void theFileIsWhatIsProved() throws IOException {
        byte[] made = PLAYS.file();
        if ("write".equals(System.getProperty("pipwright.test.endings"))) {
            Path file = Path.of(
                    "src/main/resources", EndingPlays.class.getPackageName().replace('.', '/'));
            Files.write(file.resolve(EndingPlays.FILE), made);
        }
        try (InputStream file = EndingPlays.class.getResourceAsStream(EndingPlays.FILE)) {
            assertArrayEquals(file.readAllBytes(), made);
        }
    }

    /** Rolls that leave the same are one; all 36 throws are there. */
    @Test
    void rollsTogetherAreAllThrows() {
        for (int arrangement = 1; arrangement < INDEX.size(); arrangement++) {
            EndingRolls rolls = EndingPlays.ALL.of(arrangement);
            int throwsInAll = 0;
            for (int ways : rolls.sureWays()) {
                throwsInAll += ways;
            }
            for (int ways : rolls.choiceWays()) {
                throwsInAll += ways;
            }
            assertTrue(throwsInAll == 36, points(arrangement) + ": " + throwsInAll);
            BitSet results = new BitSet();
            for (int[] ofRoll : PLAYS.of(arrangement)) {
                Arrays.stream(ofRoll).forEach(results::set);
            }
            results.clear(0);
            assertEquals(results, rolls.after());
        }
    }
}
