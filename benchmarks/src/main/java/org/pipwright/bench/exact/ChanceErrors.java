package org.pipwright.bench.exact;

import java.util.Locale;
import org.pipwright.engine.evaluation.Outcomes;

/**
 * Root mean square and largest errors of the chances to win, of gammons and of backgammons, won and lost alike, and mean
 * and largest of the equity.
 */
final class ChanceErrors {
    private final Error win = new Error();
    private final Error gammon = new Error();
    private final Error backgammon = new Error();
    private final Error equity = new Error();

    private static final class Error {
        private double sum;
        private double squares;
        private double worst;
        private int count;

        void add(double error) {
            sum += Math.abs(error);
            squares += error * error;
            worst = Math.max(worst, Math.abs(error));
            count++;
        }

        String rms() {
            return words(Math.sqrt(squares / count));
        }

        String mean() {
            return words(sum / count);
        }

        private String words(double typical) {
            return String.format(Locale.ROOT, "%.4f, %.4f", typical, worst);
        }
    }

    /** Adds a position. Gammon chances include backgammons. */
    void add(Outcomes judged, Outcomes exact) {
        win.add(judged.win() - exact.win());
        gammon.add(judged.winGammon() + judged.winBackgammon() - exact.winGammon() - exact.winBackgammon());
        gammon.add(judged.loseGammon() + judged.loseBackgammon() - exact.loseGammon() - exact.loseBackgammon());
        backgammon.add(judged.winBackgammon() - exact.winBackgammon());
        backgammon.add(judged.loseBackgammon() - exact.loseBackgammon());
        equity.add(judged.equity() - exact.equity());
    }

    @Override
    public String toString() {
        return win.rms() + " | " + gammon.rms() + " | " + backgammon.rms() + " | " + equity.mean();
    }
}
