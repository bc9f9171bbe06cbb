package org.pipwright.engine.ranking;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** How a ranking is shown to people. */
public final class Listing {
    private Listing() {}

    /**
     * The best of a ranking in the order of their values. A ranking goes by depth first, since a shallow value is no reason
     * to prefer a choice to one looked at more deeply; as a list of values that would look unsorted. Its best stays first.
     *
     * @param ranking choices, best first, at least one
     * @param most how many of them at most, at least 1
     * @param value what a choice is worth, the higher the better
     * @param <T> type of a choice
     * @return the first so many of the ranking, those behind the very first by their values
     */
    public static <T> List<T> byValue(List<T> ranking, int most, ToDoubleFunction<T> value) {
        List<T> listed = new ArrayList<>(ranking.subList(0, Math.min(most, ranking.size())));
        listed.subList(1, listed.size()).sort(Comparator.comparingDouble(choice -> -value.applyAsDouble(choice)));
        return List.copyOf(listed);
    }
}
