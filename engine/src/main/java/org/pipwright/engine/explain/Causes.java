package org.pipwright.engine.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Why one play is better than another, by kinds of fact. What the opponent's hits cost is measured where its replies are
 * known; of the other facts it is counted how they differ, and weighed by what such differences count on average
 * ({@link TraitWeights}).
 *
 * @param all the kinds of fact that differ, what costs the weaker play most first
 */
public record Causes(List<Cause> all) {
    /** A second cause is named with the first if it counts at least so much of it. */
    private static final double BESIDE = 0.6;

    /**
     * Keeps the causes.
     *
     * @param all what costs most first
     */
    public Causes {
        all = List.copyOf(all);
    }

    /**
     * The causes of a difference.
     *
     * @param best the better play
     * @param rival the weaker one, of the same roll
     * @return the causes
     */
    public static Causes of(ExplainedPlay best, ExplainedPlay rival) {
        Map<Motive, Double> points = new EnumMap<>(Motive.class);
        Stage stage = best.facts().stage();
        for (Trait trait : Trait.values()) {
            double more = trait.of(best.facts()) - trait.of(rival.facts());
            points.merge(trait.motive(), more * TraitWeights.FITTED.of(stage, trait), Double::sum);
        }
        boolean measured = best.swings().known() && rival.swings().known();
        if (measured) {
            points.put(Motive.SHOTS, rival.swings().costOfHits() - best.swings().costOfHits());
        }
        List<Cause> causes = new ArrayList<>();
        points.forEach((motive, size) -> causes.add(new Cause(motive, size, measured && motive == Motive.SHOTS)));
        causes.removeIf(cause -> cause.points() == 0);
        causes.sort(Comparator.comparingDouble(cause -> -cause.points()));
        return new Causes(causes);
    }

    /**
     * The same without kinds of fact that cannot be told.
     *
     * @param untold kinds to leave out
     * @return the others
     */
    public Causes without(List<Motive> untold) {
        return new Causes(
                all.stream().filter(cause -> !untold.contains(cause.motive())).collect(Collectors.toList()));
    }

    /**
     * What costs the weaker play most.
     *
     * @return one or two causes, the larger first; none if nothing speaks against it
     */
    public List<Cause> main() {
        List<Cause> against = against();
        if (against.size() < 2
                || against.get(1).points() < BESIDE * against.get(0).points()) {
            return against.subList(0, Math.min(1, against.size()));
        }
        return against.subList(0, 2);
    }

    /**
     * What costs the weaker play something.
     *
     * @return causes, the largest first
     */
    public List<Cause> against() {
        return all.stream().filter(cause -> cause.points() > 0).collect(Collectors.toUnmodifiableList());
    }

    /**
     * What speaks for it.
     *
     * @return causes, what counts most first
     */
    public List<Cause> inFavour() {
        List<Cause> merits =
                all.stream().filter(cause -> cause.points() < 0).collect(Collectors.toCollection(ArrayList::new));
        merits.sort(Comparator.comparingDouble(Cause::points));
        return List.copyOf(merits);
    }
}
