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
