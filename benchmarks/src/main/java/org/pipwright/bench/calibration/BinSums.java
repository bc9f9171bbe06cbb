package org.pipwright.bench.calibration;

import org.pipwright.bench.games.Ratio;

/** Adds up one {@link Bin}; positions come game by game. */
final class BinSums {
    private final double low;
    private final double high;
    private long count;
    private double predicted;
    private double observed;
    private double binomial;

    /** Observed less predicted, over positions. */
    private final Ratio difference = new Ratio();

    private int game = -1;
    private double gameDifference;
    private int gameCount;

    BinSums(double low, double high) {
        this.low = low;
        this.high = high;
    }

    void add(int ofGame, double prediction, int happened) {
        if (ofGame != game) {
            closeGame();
            game = ofGame;
        }
        count++;
        predicted += prediction;
        observed += happened;
        binomial += prediction * (1 - prediction);
        gameDifference += happened - prediction;
        gameCount++;
    }

    private void closeGame() {
        if (gameCount > 0) {
            difference.add(gameDifference, gameCount);
        }
        gameDifference = 0;
        gameCount = 0;
    }

    Bin bin() {
        closeGame();
        return new Bin(low, high, count, predicted / count, observed / count, error());
    }

    /**
     * Standard error of observed less predicted. Positions of one game share its end, so games count as one draw each. But
     * not less than independent positions would have if the predictions were right: a rare chance that has not come true
     * yet says little of its spread.
     */
    private double error() {
        return Math.max(difference.error(), Math.sqrt(binomial) / count);
    }
}
