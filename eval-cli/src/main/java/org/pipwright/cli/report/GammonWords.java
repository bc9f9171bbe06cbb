package org.pipwright.cli.report;

import java.util.Optional;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.explain.ExplainedPlay;

/** What gammons are worth at a score, and what that means for two plays. */
final class GammonWords {
    private static final double NOTHING = 0.05;
    private static final double WHOLE = 0.95;
    private final ExplainedPlay best;
    private final ExplainedPlay rival;
    private final GammonValues gammons;

    GammonWords(ExplainedPlay best, ExplainedPlay rival, GammonValues gammons) {
        this.best = best;
        this.rival = rival;
        this.gammons = gammons;
    }

    /** A clause about the gammons that the score makes more or less of; empty if neither side's number differs. */
    Optional<String> clause() {
        double won = (gammons.mine() - 0.5) * -rival.moreGammons(best);
        double lost = (gammons.theirs() - 0.5) * rival.moreGammonsLost(best);
        return won >= lost
                ? clause("winning", gammons.mine(), "wins", rival.moreGammons(best))
                : clause("losing", gammons.theirs(), "loses", rival.moreGammonsLost(best));
    }

    private static Optional<String> clause(String doing, double value, String does, double more) {
        String size = Numbers.percent(Math.abs(more));
        if (size.equals("0.0")) {
            return Optional.empty();
        }
        String number = size + (more > 0 ? " more" : " fewer");
        return Optional.of("at this score " + doing + " a gammon " + worth(doing, value)
                + (value > NOTHING
                        ? ", and it " + does + " " + number + " in 100 games"
                        : ", so the " + number + " that it " + does + " in 100 games "
                                + (more > 0 == doing.equals("winning") ? "bring" : "cost") + " it nothing"));
    }

    private static String worth(String doing, double value) {
        if (value <= NOTHING) {
            return "counts no more than " + doing + " a single game";
        }
        return value >= WHOLE
                ? "decides as much again as the game itself (gammon value " + Numbers.hundredths(value) + ")"
                : "has a value of " + Numbers.hundredths(value) + " instead of 0.50 for money";
    }
}
