package org.pipwright.bench.exact;

import java.util.Locale;
import org.pipwright.engine.evaluation.Outcomes;

/** Root mean square and largest errors of the chances to win, of gammons and of backgammons, won and lost alike. */
final class ChanceErrors {
    private final Error win = new Error();
    private final Error gammon = new Error();
    private final Error backgammon = new Error();

    private static final class Error {
        private double squares;
        private double worst;
        private int count;

        void add(double error) {
            squares += error * error;
            worst = Math.max(worst, Math.abs(error));
            count++;
        }

        @Override
        public String toString() {
            return String.format(Locale.ROOT, "%.4f, %.4f", Math.sqrt(squares / count), worst);
        }
    }

    /** Adds a position. Gammon chances include backgammons. */
    void add(Outcomes judged, Outcomes exact) {
        win.add(judged.win() - exact.win());
        gammon.add(judged.winGammon() + judged.winBackgammon() - exact.winGammon() - exact.winBackgammon());
        gammon.add(judged.loseGammon() + judged.loseBackgammon() - exact.loseGammon() - exact.loseBackgammon());
        backgammon.add(judged.winBackgammon() - exact.winBackgammon());
        backgammon.add(judged.loseBackgammon() - exact.loseBackgammon());
    }

    @Override
    public String toString() {
        return win + " | " + gammon + " | " + backgammon;
    }
}
