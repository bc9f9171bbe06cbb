package org.pipwright.engine.cube;

import java.util.Optional;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/**
 * Take points and doubling windows that belong to a position. Most come from the model of its regime. Where its own values
 * are exact, the model's window could contradict them: it is left out then, but on a last roll, whose window is exact too.
 */
public final class CubeWindows {
    private CubeWindows() {}

    /**
     * The window of a position.
     *
     * @param terms what is played for, seen from the side on roll
     * @param position an unfinished position
     * @param shares how its wins and losses split
     * @param cube the cube, seen from the side on roll
     * @return the window; empty where the values are exact and this is not the last roll, and where the side on roll gains
     *     nothing by doubling, since it wins as much without
     */
    public static Optional<CubeWindow> of(CubeTerms terms, Position position, GammonShares shares, CubeState cube) {
        if (terms.ofTaken(terms.won(GameResult.SINGLE, cube.taken())) <= terms.won(GameResult.SINGLE, cube)) {
            return Optional.empty();
        }
        if (terms.exact(position, cube).isEmpty()) {
            return Optional.of(CubeWindow.of(terms.curves(position, shares, cube)));
        }
        return lastRoll(position) ? Optional.of(CubeWindow.of(dead(terms, cube))) : Optional.empty();
    }

    /** Whether the opponent bears off its last checker with any roll, so that the side on roll wins now or never. */
    private static boolean lastRoll(Position position) {
        int[] planes = position.swapped().toPlanes();
        PlayGenerator generator = new PlayGenerator();
        return Roll.all().stream().allMatch(roll -> ends(generator, planes, roll));
    }

    private static boolean ends(PlayGenerator generator, int[] planes, Roll roll) {
        int count = generator.generate(planes, 0, roll.high(), roll.low());
        for (int i = 0; i < count; i++) {
            if ((Planes.occupied(generator.results(), i * Planes.STRIDE) & Planes.ON_BOARD) == 0) {
                return true;
            }
        }
        return false;
    }

    /** A single game that nobody doubles any more, or that is doubled now for the last time. */
    private static CubeCurves dead(CubeTerms terms, CubeState cube) {
        double won = terms.won(GameResult.SINGLE, cube);
        double lost = lost(terms, cube);
        double wonMore = terms.ofTaken(terms.won(GameResult.SINGLE, cube.taken()));
        double lostMore = terms.ofTaken(lost(terms, cube.taken()));
        return win -> {
            double take = lostMore + win * (wonMore - lostMore);
            return new CubeValues(true, false, lost + win * (won - lost), take, won, take);
        };
    }

    private static double lost(CubeTerms terms, CubeState cube) {
        return terms.toOther(terms.swapped().won(GameResult.SINGLE, cube.swapped()));
    }
}
