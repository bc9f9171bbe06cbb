package org.pipwright.engine.review;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.ranking.Grade;

/** What was decided in a turn, and what it cost. */
final class Decisions {
    private Decisions() {}

    /** The decisions of a turn in their order; terms are seen from the side on roll. */
    static List<Decision> of(Moment moment, Finding finding, CubeTerms terms) {
        List<Decision> decisions = new ArrayList<>();
        finding.cube().ifPresent(values -> decisions.addAll(ofCube(moment, values, terms)));
        moment.played().ifPresent(turn -> {
            double point = new Worth(terms, moment.rolling()).point();
            decisions.add(play(moment, finding.options(), turn.play(), point));
        });
        return decisions;
    }

    /** Those about the cube, for a turn with a choice to double. */
    static List<Decision> ofCube(Moment moment, CubeValues values, CubeTerms terms) {
        List<Decision> decisions = new ArrayList<>();
        double point = new Worth(terms, moment.cube()).point();
        if (moment.doubled() || moment.played().isPresent()) {
            decisions.add(doubling(moment, values, point));
        }
        moment.answer().ifPresent(answer -> decisions.add(answer(moment, values, answer, point)));
        return decisions;
    }

    private static Decision doubling(Moment moment, CubeValues values, double point) {
        double cost = values.cost(moment.doubled() ? CubeAction.DOUBLE : CubeAction.ROLL);
        double otherwise = values.cost(moment.doubled() ? CubeAction.ROLL : CubeAction.DOUBLE);
        boolean counted = moment.doubled() || Grade.ofCost(-otherwise / point) != Grade.HEAVY;
        return decision(Decision.Kind.DOUBLE, moment.onRoll(), -cost, point, total(moment, moment.cube()), counted);
    }

    private static Decision answer(Moment moment, CubeValues values, CubeAction answer, double point) {
        double cost = values.cost(answer);
        return decision(Decision.Kind.ANSWER, moment.opponent(), -cost, point, total(moment, moment.cube()), true);
    }

    private static Decision play(Moment moment, List<PlayOption> options, Play made, double point) {
        double cost = PlayChoice.cost(options, made);
        double total = total(moment, moment.rolling());
        return decision(Decision.Kind.PLAY, moment.onRoll(), cost, point, total, options.size() > 1);
    }

    private static Decision decision(
            Decision.Kind kind, int side, double cost, double point, double total, boolean counted) {
        // Minus 0 would print as such.
        double least = Math.min(0, cost + 0.0);
        return new Decision(kind, side, least, least / point + 0.0, least * total + 0.0, counted);
    }

    /** What counts in the end for each unit of a value: points of the game with this cube, or chance to win the match. */
    static double total(Moment moment, CubeState cube) {
        return moment.stakes() instanceof MoneyStakes ? cube.value() : 1;
    }
}
