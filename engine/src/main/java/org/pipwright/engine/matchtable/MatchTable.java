package org.pipwright.engine.matchtable;

import java.io.InvalidObjectException;
import java.io.ObjectInputStream;
import java.io.Serializable;
import java.nio.file.Path;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.score.MatchScore;

/**
 * Chances to win a match from each score, before a game whose first player is not yet known. At 1-away against n-away
 * the table has two values: for the Crawford game and for the games after it. Immutable but for a memory: exact endings
 * are worked out from its chances once asked for, and kept.
 */
@PublicApi
public final class MatchTable implements Serializable {
    private static final long serialVersionUID = 1;

    /** How far two chances of the same score seen from both sides may be from 1, before they are reconciled. */
    private static final double SLACK = 0.02;

    private final double[][] chances;
    private final double[] postCrawford;

    /** Exact values of the last rolls of a game by these chances, as far as they have been asked for. */
    private final transient MatchEndings endings = new MatchEndings(this);

    /**
     * A table.
     *
     * @param chances [a][b], 1 to the table's length each (row and column 0 are not used): chance of the side that needs a
     *     points against one that needs b; where one of them is 1 and the other not, before the Crawford game
     * @param postCrawford [n], 1 to the length: chance of the side that needs n against one that needs 1, after the
     *     Crawford game
     * @throws IllegalArgumentException if sizes differ, a value is no chance, the two sides of a score do not add up to 1
     *     within 0.02 (rounding within that is shared between them), or a side that needs more points has a better chance;
     *     equal chances are what rounding leaves of small differences
     */
    public MatchTable(double[][] chances, double[] postCrawford) {
        this(chances, postCrawford, true);
    }

    /** A table that is still being computed: entries not known yet need not be consistent with the rest. */
    static MatchTable unfinished(double[][] chances, double[] postCrawford) {
        return new MatchTable(chances, postCrawford, false);
    }

    private MatchTable(double[][] chances, double[] postCrawford, boolean finished) {
        int length = postCrawford.length - 1;
        if (length < 1 || chances.length != length + 1) {
            throw new IllegalArgumentException("a match table is square, with as many chances after the Crawford game");
        }
        this.chances = new double[length + 1][length + 1];
        this.postCrawford = postCrawford.clone();
        for (int a = 1; a <= length; a++) {
            if (chances[a].length != length + 1) {
                throw new IllegalArgumentException("row " + a + " of the match table is not " + length + " long");
            }
            requireChance(postCrawford[a], "after the Crawford game at " + a + "-away");
            for (int b = 1; b <= length; b++) {
                this.chances[a][b] = reconciled(chances, a, b);
            }
        }
        if (Math.abs(postCrawford[1] - 0.5) > SLACK / 2) {
            throw new IllegalArgumentException("1-away against 1-away is 0.5, not " + postCrawford[1]);
        }
        this.postCrawford[1] = 0.5;
        if (finished) {
            requireOrder();
        }
    }

    private MatchTable(Written written) {
        chances = written.chances;
        postCrawford = written.postCrawford;
    }

    /** The serialized form: already reconciled, since doing so twice could change the last bits. */
    private record Written(double[][] chances, double[] postCrawford) implements Serializable {
        private Object readResolve() {
            return new MatchTable(this);
        }
    }

    private Object writeReplace() {
        return new Written(chances, postCrawford);
    }

    private void readObject(ObjectInputStream in) throws InvalidObjectException {
        throw new InvalidObjectException("a match table is written as its chances");
    }

    private void requireOrder() {
        for (int a = 2; a <= length(); a++) {
            requireOrder(postCrawford[a - 1], postCrawford[a], a, "1-away after the Crawford game");
            for (int b = 1; b <= length(); b++) {
                requireOrder(chances[a - 1][b], chances[a][b], a, b + "-away");
            }
        }
    }

    private static void requireOrder(double nearer, double farther, int away, String against) {
        if (farther > nearer + CubeTerms.NOISE) {
            throw new IllegalArgumentException("the chance at " + away + "-away against " + against
                    + " is better than at " + (away - 1) + "-away: needing more points cannot be better");
        }
    }

    private static double reconciled(double[][] chances, int a, int b) {
        requireChance(chances[a][b], "at " + a + "-away against " + b + "-away");
        double sum = chances[a][b] + chances[b][a];
        if (Math.abs(sum - 1) > SLACK) {
            throw new IllegalArgumentException("the chances at " + a + "-away against " + b + "-away and at " + b
                    + "-away against " + a + "-away add up to " + sum + ": they must add up to 1");
        }
        return (1 + chances[a][b] - chances[b][a]) / 2;
    }

    private static void requireChance(double value, String where) {
        if (!(value >= 0 && value <= 1)) {
            throw new IllegalArgumentException("the chance " + where + " is " + value + ": write a number from 0 to 1");
        }
    }

    /**
     * The longest match it covers.
     *
     * @return points
     */
    public int length() {
        return postCrawford.length - 1;
    }

    /**
     * The chance to win the match.
     *
     * @param score the score before a game
     * @return chance of the side the score is seen from
     * @throws IllegalArgumentException if the score is beyond the table
     */
    public double chance(MatchScore score) {
        requireCovered(score);
        if (score.postCrawford()) {
            return score.mine() == 1 ? 1 - afterCrawford(score.theirs()) : afterCrawford(score.mine());
        }
        return beforeCrawford(score.mine(), score.theirs());
    }

    /**
     * Keeps what takes long to work out, exact endings at a score, in a folder for later runs, and looks there first: eight
     * scores, of 27 MB each up to 16-away and 41 MB up to 25-away. It changes no value. A folder that cannot be used costs
     * only the time.
     *
     * @param folder made when first written to
     */
    public void keepEndingsIn(Path folder) {
        endings.keepIn(folder);
    }

    /** Exact values of endings with these chances after the game. */
    MatchEndings endings() {
        return endings;
    }

    /**
     * The table's entry for a score, before the Crawford game where one side needs one point.
     *
     * @param mine points this side needs, 1 to {@link #length()}
     * @param theirs points the other needs, 1 to {@link #length()}
     * @return chance of this side
     */
    double beforeCrawford(int mine, int theirs) {
        return chances[mine][theirs];
    }

    /**
     * The table's entry for the games after the Crawford game.
     *
     * @param mine points the trailer needs, 1 to {@link #length()}
     * @return chance of the trailer
     */
    double afterCrawford(int mine) {
        return postCrawford[mine];
    }

    /**
     * The chance to win the match after a game.
     *
     * @param score the score before the game
     * @param points points of the side the score is seen from, negative if it loses them
     * @return chance of that side, 1 or 0 if the match is over
     */
    public double chanceAfter(MatchScore score, int points) {
        requireCovered(score);
        if (score.ends(points)) {
            return points > 0 ? 1 : 0;
        }
        return chance(score.after(points));
    }

    private void requireCovered(MatchScore score) {
        if (Math.max(score.mine(), score.theirs()) > length()) {
            throw new IllegalArgumentException("the match table ends at " + length() + "-away, but the score is "
                    + score.mine() + "-away against " + score.theirs()
                    + "-away: play a shorter match or give a longer table");
        }
    }
}
