package org.pipwright.engine.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaivePlayGenerator;
import org.pipwright.engine.naive.NaiveRules;
import org.pipwright.engine.roll.Roll;

/**
 * In the game of one checker a side every position can be followed to every end. An outcome that can be reached is never
 * ruled out in any of its 601 unfinished positions.
 */
@Tag("fast")
class TinyGameOutcomesTest {
    private static final int UNFINISHED = 601;

    @Test
    void everyReachableOutcomeIsPossible() {
        Map<NaiveBoard, Integer> reachable = new HashMap<>();
        for (int mine = 1; mine <= NaiveBoard.BAR; mine++) {
            for (int theirs = 1; theirs <= NaiveBoard.BAR; theirs++) {
                if (mine + theirs != 25) {
                    reachable.put(NaiveBoard.of(one(mine), one(theirs)), 0);
                }
            }
        }
        assertEquals(UNFINISHED, reachable.size());
        while (sweep(reachable)) {
            // Until nothing new is reached.
        }
        reachable.forEach((board, outcomes) ->
                assertEquals(0, outcomes & ~PossibleOutcomes.of(board.toPlanes(), 0), board::toString));
    }

    /** Adds to each position what its replies reach; whether that added anything. */
    private static boolean sweep(Map<NaiveBoard, Integer> reachable) {
        boolean grew = false;
        for (Map.Entry<NaiveBoard, Integer> entry : reachable.entrySet()) {
            int outcomes = entry.getValue();
            for (Roll roll : Roll.all()) {
                Set<NaiveBoard> results = NaivePlayGenerator.generate(entry.getKey(), roll.high(), roll.low())
                        .results();
                for (NaiveBoard result : results) {
                    outcomes |= NaiveRules.allOff(result) ? won(result) : swapped(reachable.get(result.swapped()));
                }
            }
            grew |= outcomes != entry.getValue();
            entry.setValue(outcomes);
        }
        return grew;
    }

    private static int won(NaiveBoard result) {
        return 1 << NaiveRules.pointsLost(result.swapped()) - 1;
    }

    private static int swapped(int outcomes) {
        return outcomes >> 3 | (outcomes & 7) << 3;
    }

    private static int[] one(int place) {
        int[] counts = new int[NaiveBoard.PLACES];
        counts[place] = 1;
        return counts;
    }
}
