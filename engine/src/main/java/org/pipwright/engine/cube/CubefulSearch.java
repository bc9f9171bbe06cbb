package org.pipwright.engine.cube;

import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/**
 * Values of the cube actions with lookahead n: each of the 21 rolls is played for the most with the cube where it then
 * stands, and what the opponent gets is its best cube action with lookahead n - 1. Lookahead 0 is the model at the
 * evaluator's chances. Plays are narrowed down to the best few by lookahead 0 where deeper levels follow. Serves one
 * thread.
 */
public final class CubefulSearch {
    /** Largest lookahead; each one costs 21 rolls times the kept plays. */
    public static final int MOST = 3;

    private static final int KEPT = 4;

    private final PositionEvaluator evaluator;
    private final int kept;
    private final AfterPlay afterPlay = new AfterPlay();
    private final float[] finished = new float[Outcomes.COUNT];

    /**
     * A search.
     *
     * @param evaluator gives the chances of positions
     */
    public CubefulSearch(PositionEvaluator evaluator) {
        this(evaluator, KEPT);
    }

    /** A search that keeps another number of plays of each roll. */
    CubefulSearch(PositionEvaluator evaluator, int kept) {
        this.evaluator = evaluator;
        this.kept = kept;
    }

    /**
     * The values of a position.
     *
     * @param position an unfinished position before the roll
     * @param cube the cube, seen from the side on roll
     * @param terms what is played for, seen from the side on roll
     * @param lookahead 0 to {@value #MOST}
     * @return values to the side on roll, exact where they are known
     */
    public CubeValues values(Position position, CubeState cube, CubeTerms terms, int lookahead) {
        if (lookahead < 0 || lookahead > MOST) {
            throw new IllegalArgumentException("the cube is judged with lookahead 0 to " + MOST + ", not " + lookahead);
        }
        Outcomes outcomes = evaluator.evaluate(position);
        CubeValues exact = terms.exact(position, cube).orElse(null);
        CubeValues model = exact != null
                ? exact
                : terms.curves(position, GammonShares.of(outcomes), cube).at(outcomes.win());
        return exact != null || lookahead == 0 ? model : looked(model, position, cube, terms, lookahead);
    }

    /** Replaces the values that involve a roll. */
    private CubeValues looked(CubeValues model, Position position, CubeState cube, CubeTerms terms, int lookahead) {
        double roll = rolling(position, cube, terms, lookahead);
        if (!model.mayDouble()) {
            return new CubeValues(false, false, roll, roll, model.doublePass(), roll);
        }
        double take = terms.ofTaken(rolling(position, cube.taken(), terms, lookahead));
        double beaver = model.mayBeaver()
                ? terms.ofTaken(terms.ofTaken(rolling(position, cube.beavered(), terms, lookahead)))
                : take;
        return new CubeValues(true, model.mayBeaver(), roll, take, model.doublePass(), beaver);
    }

    /**
     * The value of a position with the right cube action.
     *
     * @param position an unfinished position before the roll
     * @param cube the cube, seen from the side on roll
     * @param terms what is played for, seen from the side on roll
     * @param lookahead 0 to {@value #MOST}
     * @return value to the side on roll, exact where it is known
     */
    public double best(Position position, CubeState cube, CubeTerms terms, int lookahead) {
        if (lookahead == 0 || terms.exact(position, cube).isPresent()) {
            return terms.best(position, evaluator.evaluate(position), cube);
        }
        return values(position, cube, terms, lookahead).best();
    }

    /**
     * What each result of a roll is worth to the side that plays, without lookahead.
     *
     * @param planes the position before the play, the mover's side first
     * @param results the results, as the play generator gives them
     * @param count number of results
     * @param cube the cube, seen from the mover
     * @param terms what is played for, seen from the mover
     * @param worth where to write a value a result
     * @param chances where to write six chances a result, for the mover
     */
    public void worth(
            int[] planes, int[] results, int count, CubeState cube, CubeTerms terms, double[] worth, float[] chances) {
        evaluator.evaluateResults(planes, 0, results, count, chances);
        for (int i = 0; i < count; i++) {
            worth[i] = afterPlay.worth(terms, cube, results, i * Planes.STRIDE, chances, i * Outcomes.COUNT);
        }
    }

    /**
     * What a result of a roll is worth to the side that plays, with lookahead.
     *
     * @param results the results of a roll, the mover's side first
     * @param at index of the first plane of one of them
     * @param cube the cube, seen from the mover
     * @param terms what is played for, seen from the mover
     * @param lookahead 0 to {@value #MOST}
     * @return value to the mover
     */
    public double worth(int[] results, int at, CubeState cube, CubeTerms terms, int lookahead) {
        int[] child = new int[Planes.STRIDE];
        Planes.copySwapped(results, at, child, 0);
        if (FinishedGames.write(child, 0, finished, 0)) {
            return terms.won(GameResult.of(child, 0), cube);
        }
        return terms.toOther(best(Position.ofPlanes(child, 0), cube.swapped(), terms.swapped(), lookahead));
    }

    /** Value to the side on roll of rolling now with the cube as it is. */
    private double rolling(Position position, CubeState cube, CubeTerms terms, int lookahead) {
        PlayGenerator generator = new PlayGenerator();
        int[] planes = position.toPlanes();
        double mean = 0;
        for (Roll roll : Roll.all()) {
            generator.generate(planes, 0, roll.high(), roll.low());
            mean += roll.probability() * best(planes, generator, cube, terms, lookahead - 1);
        }
        return mean;
    }

    private double best(int[] planes, PlayGenerator generator, CubeState cube, CubeTerms terms, int lookahead) {
        int count = generator.size();
        int[] results = generator.results();
        double[] worth = new double[count];
        worth(planes, results, count, cube, terms, worth, new float[count * Outcomes.COUNT]);
        return lookahead == 0 ? worth[largest(worth)] : deeper(results, worth, cube, terms, lookahead);
    }

    private double deeper(int[] results, double[] worth, CubeState cube, CubeTerms terms, int lookahead) {
        double best = Double.NEGATIVE_INFINITY;
        for (int n = 0; n < Math.min(kept, worth.length); n++) {
            int i = largest(worth);
            worth[i] = Double.NEGATIVE_INFINITY;
            best = Math.max(best, worth(results, i * Planes.STRIDE, cube, terms, lookahead));
        }
        return best;
    }

    private static int largest(double[] values) {
        int at = 0;
        for (int i = 1; i < values.length; i++) {
            at = values[i] > values[at] ? i : at;
        }
        return at;
    }
}
