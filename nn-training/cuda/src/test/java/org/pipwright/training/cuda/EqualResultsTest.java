package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.roll.Roll;

/** Against a list that is searched from its beginning. */
class EqualResultsTest {
    private static int[] resultsOfAllRolls(int[] planes, int at) {
        PlayGenerator generator = new PlayGenerator();
        int[] results = new int[0];
        for (Roll roll : Roll.all()) {
            int count = generator.generate(planes, at, roll.high(), roll.low());
            int before = results.length;
            results = Arrays.copyOf(results, before + 8 * count);
            System.arraycopy(generator.results(), 0, results, before, 8 * count);
        }
        return results;
    }

    @Test
    void findsWhatASearchFinds() {
        int[] positions = RandomPositions.of(40, 9);
        EqualResults equal = new EqualResults();
        int spared = 0;
        for (int i = 0; i < 40; i++) {
            int[] results = resultsOfAllRolls(positions, 8 * i);
            int count = results.length / 8;
            List<List<Integer>> distinct = new ArrayList<>();
            int[] places = new int[count];
            for (int k = 0; k < count; k++) {
                List<Integer> one =
                        Arrays.stream(results, 8 * k, 8 * k + 8).boxed().toList();
                if (!distinct.contains(one)) {
                    distinct.add(one);
                }
                places[k] = distinct.indexOf(one);
            }
            assertEquals(distinct.size(), equal.find(results, count));
            assertArrayEquals(places, Arrays.copyOf(equal.places(), count));
            for (int k = 0; k < distinct.size(); k++) {
                assertEquals(
                        distinct.get(k),
                        Arrays.stream(equal.distinct(), 8 * k, 8 * k + 8)
                                .boxed()
                                .toList());
            }
            spared += count - distinct.size();
        }
        assertTrue(spared > 100, "only " + spared + " results are equal to others: nothing was tried");
    }
}
