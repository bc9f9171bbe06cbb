package org.pipwright.engine.cube;

/**
 * Money play by the model of {@link TakePointModel}; values are points per unit of the present cube. The centred cube is
 * the plain blend of the dead and the live cube.
 *
 * @param stakes the rules agreed on
 * @param efficiency how well the cube is used
 */
public record MoneyModel(MoneyStakes stakes, CubeEfficiency efficiency) implements CubeModel {
    @Override
    public CubeCurves curves(GammonShares shares, CubeState cube) {
        MoneyCurves curves = new MoneyCurves(shares, stakes, efficiency);
        return win -> curves.at(win, cube);
    }
}
