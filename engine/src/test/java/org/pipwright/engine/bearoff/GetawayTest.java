package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.position.Planes;

class GetawayTest {
    private final Map<List<Integer>, Double> known = new HashMap<>();

    /** The same numbers the slow way: pips to go of each checker as a list, all orders of the dice tried. */
    private double naive(List<Integer> pips) {
        if (pips.isEmpty()) {
            return 0;
        }
        Double before = known.get(pips);
        if (before != null) {
            return before;
        }
        double mean = 1;
        for (int a = 1; a <= 6; a++) {
            for (int b = 1; b <= 6; b++) {
                List<Integer> dice = a == b ? List.of(a, a, a, a) : List.of(a, b);
                double least = Math.min(least(pips, dice), a == b ? 1e9 : least(pips, List.of(b, a)));
                mean += least / 36;
            }
        }
        known.put(pips, mean);
        return mean;
    }

    private double least(List<Integer> pips, List<Integer> dice) {
        if (dice.isEmpty() || pips.isEmpty()) {
            return naive(pips);
        }
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < pips.size(); i++) {
            List<Integer> moved = new ArrayList<>(pips);
            int left = moved.remove(i) - dice.get(0);
            if (left > 0) {
                moved.add(left);
                Collections.sort(moved);
            }
            least = Math.min(least, least(moved, dice.subList(1, dice.size())));
        }
        return least;
    }

    private static double rolls(List<Integer> pips) {
        int[] planes = new int[Planes.STRIDE];
        for (int each : pips) {
            Planes.add(planes, Planes.SIDE, 18 + each);
        }
        for (int n = pips.size(); n < 15; n++) {
            Planes.add(planes, Planes.SIDE, 1 + n);
        }
        return Getaway.rolls(planes, Planes.SIDE, new int[Planes.SIDE]);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4})
    void allArrangements(int checkers) {
        all(checkers, 1, new ArrayList<>());
    }

    private void all(int more, int least, List<Integer> pips) {
        if (more == 0) {
            assertEquals(naive(pips), rolls(pips), 1e-12, pips::toString);
            return;
        }
        for (int each = least; each <= 6; each++) {
            List<Integer> longer = new ArrayList<>(pips);
            longer.add(each);
            all(more - 1, each, longer);
        }
    }
}
