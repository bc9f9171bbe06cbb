package org.pipwright.engine.rollout;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.statistics.RepeatedLooks;

/**
 * What games say of the cube actions before a roll: their values, and how clear each choice is. What a pass gives is known,
 * so that games are needed only for what goes on.
 *
 * @param values of the actions, to the side on roll; costs are theirs
 * @param choices the choices there are, those of the side on roll first; none if it may not double
 * @param needed standard errors that make a choice clear at this look; 0 if that was not asked
 */
public record ActionStanding(CubeValues values, List<Choice> choices, double needed) {
    /** The candidate that rolls without doubling. */
    public static final int ROLL = 0;

    /** The candidate that doubles and is taken. */
    public static final int TAKE = 1;

    /** The candidate that doubles and is beavered. */
    public static final int BEAVER = 2;

    /** So close to indifference, in points, nobody has to know more. */
    static final double CLOSE = 0.01;

    /** What is chosen between. */
    public enum Kind {
        /** Doubling, with the best answer to it, or rolling; too good to double where the answer is a pass. */
        DOUBLE_OR_ROLL,
        /** Taking in any form or passing. */
        TAKE_OR_PASS,
        /** Beavering or merely taking. */
        BEAVER_OR_TAKE
    }

    /** How much is known of a choice. */
    public enum Clarity {
        /** One side of it is better. */
        CLEAR,
        /** Neither side of it is better by more than 0.01 points. */
        CLOSE,
        /** More games are needed. */
        OPEN
    }

    /**
     * One choice.
     *
     * @param kind what it is between
     * @param difference what the first is worth to the side on roll more than the second; the opponent's choices are right
     *     where that is negative
     * @param clarity how much is known of it
     */
    public record Choice(Kind kind, Estimate difference, Clarity clarity) {}

    /**
     * Copies the choices.
     *
     * @param values of the actions
     * @param choices there are
     * @param needed in standard errors
     */
    public ActionStanding {
        choices = List.copyOf(choices);
    }

    /** Whether more games would change nothing: each choice is clear, or close. */
    boolean settled() {
        return !choices.isEmpty() && choices.stream().noneMatch(choice -> choice.clarity == Clarity.OPEN);
    }

    /**
     * One of the choices.
     *
     * @param kind which
     * @return the choice
     * @throws java.util.NoSuchElementException if there is none of this kind
     */
    public Choice choice(Kind kind) {
        return choices.stream().filter(each -> each.kind == kind).findFirst().orElseThrow();
    }

    /** The standing after some trials. */
    static ActionStanding of(Moments moments, Asked asked, double sure) {
        return new Reading(moments, asked, sure).standing();
    }

    /**
     * What is known without games.
     *
     * @param mayDouble whether there are choices at all
     * @param mayBeaver whether one of the candidates is a beaver
     * @param pass value of a pass, in the unit of the candidates' values
     * @param point what a point is worth in that unit
     */
    record Asked(boolean mayDouble, boolean mayBeaver, double pass, double point) {}

    /** What a candidate's action costs the side that chooses it. */
    static Estimate cost(Moments moments, int candidate, CubeValues values) {
        double cost = values.cost(action(candidate));
        return cost == 0
                ? new Estimate(0, 0)
                : new Estimate(cost, errorAgainst(moments, candidate, better(candidate, values)));
    }

    private static CubeAction action(int candidate) {
        return candidate == ROLL ? CubeAction.ROLL : candidate == TAKE ? CubeAction.TAKE : CubeAction.BEAVER;
    }

    /** What is right where a candidate is wrong; -1 for the pass, which is known. */
    private static int better(int candidate, CubeValues values) {
        if (candidate == ROLL) {
            return answer(values);
        }
        if (Math.min(values.doubleTake(), values.doubleBeaver()) > values.doublePass()) {
            return -1;
        }
        return candidate == TAKE ? BEAVER : TAKE;
    }

    private static int answer(CubeValues values) {
        CubeAction answer = values.answer();
        return answer == CubeAction.PASS ? -1 : answer == CubeAction.TAKE ? TAKE : BEAVER;
    }

    private static double errorAgainst(Moments moments, int candidate, int other) {
        return other < 0
                ? moments.estimate(candidate, Moments.VALUE).standardError()
                : moments.difference(candidate, other).standardError();
    }

    /** Reads one look at the numbers. */
    private static final class Reading {
        private final Moments moments;
        private final Asked asked;
        private final double needed;
        private final double pass;

        Reading(Moments moments, Asked asked, double sure) {
            this.moments = moments;
            this.asked = asked;
            pass = asked.pass;
            // Each two of rolling, taking, passing and beavering are compared.
            int comparisons = asked.mayBeaver ? 6 : 3;
            needed = sure == 0 || !asked.mayDouble ? 0 : new RepeatedLooks(sure, comparisons).needed(moments.trials());
        }

        ActionStanding standing() {
            double roll = moments.mean(ROLL, Moments.VALUE);
            double take = asked.mayDouble ? moments.mean(TAKE, Moments.VALUE) : roll;
            double beaver = asked.mayBeaver ? moments.mean(BEAVER, Moments.VALUE) : take;
            CubeValues values = new CubeValues(asked.mayDouble, asked.mayBeaver, roll, take, pass, beaver);
            return new ActionStanding(values, asked.mayDouble ? choices(values) : List.of(), needed);
        }

        private List<Choice> choices(CubeValues values) {
            Estimate rolling = moments.estimate(ROLL, Moments.VALUE);
            List<Estimate> doubling = new ArrayList<>();
            List<Estimate> taking = new ArrayList<>();
            for (int answer = TAKE; answer < moments.candidates(); answer++) {
                Estimate taken = moments.estimate(answer, Moments.VALUE);
                doubling.add(moments.difference(answer, ROLL));
                taking.add(new Estimate(taken.mean() - pass, taken.standardError()));
            }
            doubling.add(new Estimate(pass - rolling.mean(), rolling.standardError()));
            List<Choice> choices = new ArrayList<>();
            choices.add(choice(Kind.DOUBLE_OR_ROLL, doubling));
            choices.add(choice(Kind.TAKE_OR_PASS, taking));
            if (asked.mayBeaver) {
                choices.add(choice(Kind.BEAVER_OR_TAKE, List.of(moments.difference(BEAVER, TAKE))));
            }
            return choices;
        }

        /** A choice of which the opponent can make the least of some differences. */
        private Choice choice(Kind kind, List<Estimate> differences) {
            Estimate least = differences.stream()
                    .min((a, b) -> Double.compare(a.mean(), b.mean()))
                    .orElseThrow();
            double low = bounds(differences, -needed).min().orElseThrow();
            double high = bounds(differences, needed).min().orElseThrow();
            return new Choice(kind, least, needed == 0 ? Clarity.OPEN : clarity(low, high));
        }

        private static DoubleStream bounds(List<Estimate> differences, double errors) {
            return differences.stream().mapToDouble(each -> each.mean() + errors * each.standardError());
        }

        private Clarity clarity(double low, double high) {
            if (low > 0 || high < 0) {
                return Clarity.CLEAR;
            }
            double close = CLOSE * asked.point;
            return low >= -close && high <= close ? Clarity.CLOSE : Clarity.OPEN;
        }
    }
}
