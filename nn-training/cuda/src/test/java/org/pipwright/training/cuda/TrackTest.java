package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Targets of a game's turns against the sum that defines them. */
class TrackTest {
    private static final float LAMBDA = 0.7f;

    private final SplittableRandom random = new SplittableRandom(21);

    private float[][] chances(int turns) {
        float[][] chances = new float[turns][6];
        for (float[] turn : chances) {
            for (int k = 0; k < 6; k++) {
                turn[k] = random.nextInt(1000) / 1000f;
            }
        }
        return chances;
    }

    /** V + D + lambda D' + ... with the corrections of turns first to last - 1, up to the next stray turn. */
    private static float[] naive(float[][] v, float[][] e, boolean[] strayed, int turn, int last) {
        double[] target = new double[6];
        for (int k = 0; k < 6; k++) {
            target[k] = v[turn][k];
            double weight = 1;
            for (int t = turn; t < last; t++) {
                // Every other turn is the other side's: its wins are this side's losses.
                int theirs = (t - turn) % 2 == 0 ? k : (k + 3) % 6;
                target[k] += weight * (e[t][theirs] - v[t][theirs]);
                weight *= LAMBDA;
                if (strayed[t]) {
                    break;
                }
            }
        }
        float[] out = new float[6];
        for (int k = 0; k < 6; k++) {
            out[k] = (float) target[k];
        }
        return out;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 39, 40, 41, 63, 64, 65, 130})
    void targetsOfAWholeGame(int turns) {
        float[][] v = chances(turns);
        float[][] e = chances(turns);
        boolean[] strayed = new boolean[turns];
        Track track = new Track();
        LessonList out = new LessonList();
        int given = 0;
        for (int t = 0; t < turns; t++) {
            strayed[t] = random.nextInt(6) == 0;
            track.add(new int[] {t, 1, 2, 3, 4, 5, 6, 7}, 0, v[t], 0, e[t], 0, strayed[t]);
            if (track.full() && t < turns - 1) {
                track.shift(LAMBDA, out);
                given = check(v, e, strayed, out, given, t + 1);
                assertEquals(t + 1 - 16, given, "16 turns stay");
            }
        }
        track.finish(LAMBDA, out);
        assertEquals(turns, check(v, e, strayed, out, given, turns));
        assertEquals(0, track.size());
    }

    /** Checks the lessons from one on, each with what was known up to a turn; gives how many there are. */
    private static int check(float[][] v, float[][] e, boolean[] strayed, LessonList out, int from, int last) {
        boolean[] seen = new boolean[out.size()];
        for (int i = from; i < out.size(); i++) {
            // Later turns come first; but no turn comes before those of an earlier time.
            int turn = out.planes()[8 * i];
            assertTrue(turn >= from && turn < out.size() && !seen[turn], "turn " + turn);
            seen[turn] = true;
            float[] given = java.util.Arrays.copyOfRange(out.targets(), 6 * i, 6 * i + 6);
            assertArrayEquals(naive(v, e, strayed, turn, last), given, 1e-5f);
        }
        return out.size();
    }
}
