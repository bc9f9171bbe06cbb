package org.pipwright.engine.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.evaluation.Outcomes;

/**
 * Why one play is better than another, by kinds of fact. What the opponent's hits cost is measured where its replies are
 * known; of the other facts it is counted how they differ, and weighed by what such differences count on average
 * ({@link TraitWeights}).
 *
 * @param all the kinds of fact that differ, what costs the weaker play most first
 */
public record Causes(List<Cause> all) {
    /** A second cause is named with the first if it counts at least so much of it, */
    private static final double BESIDE = 0.4;

    /** and the first less than so much of all that speaks against the play. */
    private static final double MOST_OF_ALL = 2.0 / 3;

    /** Part of a whole difference below which a cause is small. */
    public static final double NOTABLE_PART = 0.2;

    /** Points per game below which a cause is small. */
    public static final double NOTABLE_POINTS = 0.01;

    /** Gammons that a score makes more or less of come first if they make up so much of the difference. */
    private static final double BY_SCORE = 0.5;

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
     * @param gammons what gammons are worth under the stakes
     * @return the causes
     */
    public static Causes of(ExplainedPlay best, ExplainedPlay rival, GammonValues gammons) {
        Map<Motive, Double> points = new EnumMap<>(Motive.class);
        Stage stage = best.facts().stage();
        for (Trait trait : Trait.values()) {
            double more = trait.of(best.facts()) - trait.of(rival.facts());
            double size = more * TraitWeights.FITTED.of(stage, trait);
            points.merge(goesOff(trait, size, best, rival) ? Motive.OFF : trait.motive(), size, Double::sum);
        }
        boolean measured = best.swings().known() && rival.swings().known();
        if (measured) {
            points.put(Motive.SHOTS, rival.swings().costOfHits() - best.swings().costOfHits());
        }
        points.put(Motive.SAVE, saved(best, rival, gammons));
        points.put(Motive.GAMMONS, byScore(best, rival, gammons));
        List<Cause> causes = new ArrayList<>();
        points.forEach((motive, size) ->
                causes.add(new Cause(motive, size, measured && motive == Motive.SHOTS || motive == Motive.SAVE)));
        causes.removeIf(cause -> Math.abs(cause.points()) < CubeTerms.NOISE);
        causes.sort(Comparator.comparingDouble(cause -> -cause.points()));
        return new Causes(causes);
    }

    /**
     * The causes of a difference that can be put into words.
     *
     * @param best the better play
     * @param rival the weaker one, of the same roll
     * @param gammons what gammons are worth under the stakes
     * @param telling which can
     * @return the causes
     */
    public static Causes told(ExplainedPlay best, ExplainedPlay rival, GammonValues gammons, Telling telling) {
        return new Causes(of(best, rival, gammons).all().stream()
                .filter(cause -> telling.tells(best, rival, gammons, cause))
                .collect(Collectors.toUnmodifiableList()));
    }

    /** Whether fewer checkers stand on the low points because more were borne off: that is one cause, and no better spread. */
    private static boolean goesOff(Trait trait, double size, ExplainedPlay best, ExplainedPlay rival) {
        return trait == Trait.BURIED
                && size * (best.facts().borneOff() - rival.facts().borneOff()) > 0;
    }

    /** What the gammons make that are lost because the last checkers come home later, once nobody can be hit any more. */
    private static double saved(ExplainedPlay best, ExplainedPlay rival, GammonValues gammons) {
        double lost = ChancesApart.of(best.ranked().outcomes(), rival.ranked().outcomes(), gammons)
                .gammonsLost();
        int later = rival.facts().toHome() - best.facts().toHome();
        return best.facts().stage() == Stage.RACE && lost * later > 0 ? lost : 0;
    }

    /** What gammons make of the difference beyond what they do for money. */
    private static double byScore(ExplainedPlay best, ExplainedPlay rival, GammonValues gammons) {
        Outcomes one = best.ranked().outcomes();
        Outcomes other = rival.ranked().outcomes();
        return ChancesApart.of(one, other, gammons).sum()
                - ChancesApart.of(one, other, Explanation.USUAL).sum();
    }

    /**
     * What costs the weaker play most.
     *
     * @param difference what it costs in all, points per game
     * @return one or two causes, the first the one to begin with; none if nothing speaks against it
     */
    public List<Cause> main(double difference) {
        List<Cause> against = new ArrayList<>(against());
        against.stream()
                .filter(cause -> cause.motive() == Motive.GAMMONS && cause.points() >= BY_SCORE * difference)
                .findFirst()
                .ifPresent(cause -> {
                    against.remove(cause);
                    against.add(0, cause);
                });
        double sum = against.stream().mapToDouble(Cause::points).sum();
        boolean two = against.size() > 1
                && against.get(1).points() >= BESIDE * against.get(0).points()
                && against.get(0).points() < MOST_OF_ALL * sum;
        return List.copyOf(against.subList(0, two ? 2 : Math.min(1, against.size())));
    }

    /**
     * Those of the main causes that are worth a sentence.
     *
     * @param difference what the weaker play costs in all, points per game
     * @return one or two causes; none if nothing that is counted tells the plays apart
     */
    public List<Cause> leading(double difference) {
        double least = Math.min(NOTABLE_POINTS, NOTABLE_PART * Math.abs(difference));
        return main(difference).stream()
                .filter(cause -> Math.abs(cause.points()) >= least)
                .collect(Collectors.toUnmodifiableList());
    }

    /**
     * What costs the weaker play something.
     *
     * @return causes, the largest first
     */
    public List<Cause> against() {
        return all.stream().filter(cause -> cause.points() > 0).collect(Collectors.toUnmodifiableList());
    }
}
