package org.pipwright.engine.review;

import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.pipwright.engine.ranking.Grade;

/**
 * How a side did: its decisions that count, and its luck.
 *
 * @param plays decisions about plays
 * @param playPoints what they cost together, in points as of {@link Decision#points()}: at most 0
 * @param playGrades how many of them have each grade, in the order of {@link Grade}
 * @param cubes decisions about the cube
 * @param cubePoints what they cost together, likewise
 * @param cubeGrades how many of them have each grade, likewise
 * @param lost what all of them cost in what counts in the end: points, or chances to win the match added up; at most 0
 * @param luck luck of its rolls in the same unit, added up
 */
public record SideAccount(
        int plays,
        double playPoints,
        List<Integer> playGrades,
        int cubes,
        double cubePoints,
        List<Integer> cubeGrades,
        double lost,
        double luck) {
    /**
     * Keeps the grades.
     *
     * @param plays decisions about plays
     * @param playPoints their cost
     * @param playGrades how many of each grade
     * @param cubes decisions about the cube
     * @param cubePoints their cost
     * @param cubeGrades how many of each grade
     * @param lost cost in what counts
     * @param luck luck in the same unit
     */
    public SideAccount {
        playGrades = List.copyOf(playGrades);
        cubeGrades = List.copyOf(cubeGrades);
    }

    static SideAccount of(int side, List<ReviewedTurn> turns) {
        List<Decision> all = turns.stream()
                .flatMap(turn -> turn.decisions().stream())
                .filter(decision -> decision.counted() && decision.side() == side)
                .collect(Collectors.toList());
        Predicate<Decision> play = decision -> decision.kind() == Decision.Kind.PLAY;
        return new SideAccount(
                (int) all.stream().filter(play).count(),
                points(all, play),
                grades(all, play),
                (int) all.stream().filter(play.negate()).count(),
                points(all, play.negate()),
                grades(all, play.negate()),
                all.stream().mapToDouble(Decision::total).sum(),
                turns.stream()
                        .filter(turn -> turn.moment().onRoll() == side)
                        .mapToDouble(ReviewedTurn::luckTotal)
                        .sum());
    }

    private static double points(List<Decision> all, Predicate<Decision> which) {
        return all.stream().filter(which).mapToDouble(Decision::points).sum();
    }

    private static List<Integer> grades(List<Decision> all, Predicate<Decision> which) {
        return Arrays.stream(Grade.values())
                .map(grade -> (int) all.stream()
                        .filter(which)
                        .filter(decision -> decision.grade() == grade)
                        .count())
                .toList();
    }

    /**
     * How many decisions of either kind have each grade.
     *
     * @return counts in the order of {@link Grade}
     */
    public List<Integer> grades() {
        return Arrays.stream(Grade.values())
                .map(grade -> playGrades.get(grade.ordinal()) + cubeGrades.get(grade.ordinal()))
                .toList();
    }

    /**
     * All decisions.
     *
     * @return plays and cubes
     */
    public int decisions() {
        return plays + cubes;
    }

    /**
     * Mean cost of a decision.
     *
     * @return points, at most 0; 0 if there was no decision
     */
    public double mean() {
        return decisions() == 0 ? 0 : (playPoints + cubePoints) / decisions();
    }

    /**
     * Mean cost of a decision about a play.
     *
     * @return points, at most 0; 0 if there was none
     */
    public double playMean() {
        return plays == 0 ? 0 : playPoints / plays;
    }

    /**
     * Mean cost of a decision about the cube.
     *
     * @return points, at most 0; 0 if there was none
     */
    public double cubeMean() {
        return cubes == 0 ? 0 : cubePoints / cubes;
    }
}
