package org.pipwright.engine.review;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.judge.PlayVerdict;
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
            Worth worth = new Worth(terms, moment.rolling());
            decisions.add(play(moment, finding.options(), turn.play(), worth));
        });
        return decisions;
    }

    /** Those about the cube, for a turn with a choice to double. */
    static List<Decision> ofCube(Moment moment, CubeValues values, CubeTerms terms) {
        List<Decision> decisions = new ArrayList<>();
        Worth worth = new Worth(terms, moment.cube());
        if (moment.doubled() || moment.played().isPresent()) {
            decisions.add(doubling(moment, values, worth));
        }
        moment.answer().ifPresent(answer -> decisions.add(answer(moment, values, answer, worth)));
        return decisions;
    }

    private static Decision doubling(Moment moment, CubeValues values, Worth worth) {
        double cost = values.cost(moment.doubled() ? CubeAction.DOUBLE : CubeAction.ROLL);
        double otherwise = values.cost(moment.doubled() ? CubeAction.ROLL : CubeAction.DOUBLE);
        boolean counted = moment.doubled() || Grade.ofCost(otherwise / worth.point()) != Grade.HEAVY;
        return decision(Decision.Kind.DOUBLE, moment.onRoll(), cost, worth, counted);
    }

    private static Decision answer(Moment moment, CubeValues values, CubeAction answer, Worth worth) {
        double cost = values.cost(answer);
        return decision(Decision.Kind.ANSWER, moment.opponent(), cost, worth, true);
    }

    private static Decision play(Moment moment, List<PlayVerdict> options, Play made, Worth worth) {
        double cost = PlayChoice.find(options, made).cost();
        return decision(Decision.Kind.PLAY, moment.onRoll(), cost, worth, options.size() > 1);
    }

    /** Both sides lose in the same unit, so that either's terms tell what counts in the end. */
    private static Decision decision(Decision.Kind kind, int side, double cost, Worth worth, boolean counted) {
        // Minus 0 would print as such.
        double least = Math.min(0, cost + 0.0);
        return new Decision(kind, side, least, least / worth.point() + 0.0, worth.total(least) + 0.0, counted);
    }
}
