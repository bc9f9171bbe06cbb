package org.pipwright.bench.calibration;

/** Adds up one {@link Bin}; positions come game by game. */
final class BinSums {
    private final double low;
    private final double high;
    private long count;
    private double predicted;
    private double observed;
    private double binomial;

    private int game = -1;
    private double gameDifference;
    private double gameCount;
    private long games;
    private double squares;
    private double products;
    private double countSquares;

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
            games++;
            squares += gameDifference * gameDifference;
            products += gameDifference * gameCount;
            countSquares += gameCount * gameCount;
        }
        gameDifference = 0;
        gameCount = 0;
    }

    Bin bin() {
        closeGame();
        return new Bin(low, high, count, predicted / count, observed / count, error());
    }

    /**
     * Standard error of observed less predicted. Positions of one game share its end, so games count as one draw each (the
     * usual linearised variance of a ratio of sums over clusters; Cochran, Sampling Techniques, section 6.3). But not less
     * than independent positions would have if the predictions were right: a rare chance that has not come true yet says
     * little of its spread.
     */
    private double error() {
        double difference = (observed - predicted) / count;
        double sum = squares - 2 * difference * products + difference * difference * countSquares;
        double clustered = games < 2 ? 0 : Math.sqrt(Math.max(0, sum) * games / (games - 1.0));
        return Math.max(clustered, Math.sqrt(binomial)) / count;
    }
}
