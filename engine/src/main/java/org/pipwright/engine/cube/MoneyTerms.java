package org.pipwright.engine.cube;

import java.util.Optional;
import java.util.OptionalDouble;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rules.GameResult;

/**
 * Money play: exact values at the end of a bear-off, elsewhere the {@link MoneyModel} with the efficiency of the
 * position's regime. Values are points per unit of the present cube.
 */
public final class MoneyTerms implements CubeTerms {
    /** So high a cube has room for a beaver at every roll of the largest lookahead. */
    private static final int ROOMY = 64;

    private final MoneyStakes stakes;
    private final ExactCube exact;

    /**
     * Terms.
     *
     * @param stakes the rules agreed on
     * @param exact what is known exactly; null to use the model everywhere
     */
    public MoneyTerms(MoneyStakes stakes, ExactCube exact) {
        this.stakes = stakes;
        this.exact = exact;
    }

    @Override
    public Stakes stakes() {
        return stakes;
    }

    @Override
    public CubeCurves curves(Position position, GammonShares shares, CubeState cube) {
        return new MoneyModel(stakes, EfficiencyByRegime.of(position)).curves(shares, cube);
    }

    @Override
    public Optional<CubeValues> exact(Position position, CubeState cube) {
        return exact == null ? Optional.empty() : exact.values(position, cube, stakes);
    }

    @Override
    public double best(Position position, Outcomes outcomes, CubeState cube) {
        OptionalDouble known = known(position, cube);
        return known.isPresent()
                ? known.getAsDouble()
                : values(position, outcomes, cube).best();
    }

    @Override
    public OptionalDouble known(Position position, CubeState cube) {
        return exact == null ? OptionalDouble.empty() : exact.best(position, cube);
    }

    @Override
    public boolean known(int[] planes, int at, CubeState[] cubes, double[] out) {
        return exact != null && exact.best(planes, at, cubes, out);
    }

    @Override
    public void rolling(int[] planes, int at, float[] chances, int chancesAt, CubeState[] cubes, double[] out) {
        MoneyCurves curves =
                new MoneyCurves(GammonShares.of(chances, chancesAt), stakes, EfficiencyByRegime.of(planes, at));
        double win = (double) chances[chancesAt] + chances[chancesAt + 1] + chances[chancesAt + 2];
        for (int i = 0; i < cubes.length; i++) {
            out[i] = curves.rolling(win, cubes[i]);
        }
    }

    /** A turned cube is as good as any other, and so is one that has not been turned. */
    @Override
    public CubeState alike(CubeState cube) {
        if (cube.value() > ROOMY) {
            return cube;
        }
        return cube.owner() == CubeOwner.CENTRE ? CubeState.START : new CubeState(2, cube.owner());
    }

    @Override
    public double ended(int points) {
        return points;
    }

    @Override
    public double won(GameResult result, CubeState cube) {
        return (double) stakes.points(result, cube) / cube.value();
    }

    @Override
    public double toOther(double value) {
        return -value;
    }

    @Override
    public double ofTaken(double value) {
        return 2 * value;
    }

    @Override
    public double inAll(double value, CubeState cube) {
        return value * cube.value();
    }

    @Override
    public MoneyTerms swapped() {
        return this;
    }
}
