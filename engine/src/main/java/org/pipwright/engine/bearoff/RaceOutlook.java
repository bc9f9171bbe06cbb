package org.pipwright.engine.bearoff;

import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;

/**
 * All that is known of a race: both sides' distributions and the chances that follow.
 *
 * @param basis what the chances rest on
 * @param outcomes six chances of the side on roll
 * @param onRoll outlook of the side on roll
 * @param opponent outlook of the opponent
 */
public record RaceOutlook(Basis basis, Outcomes outcomes, SideOutlook onRoll, SideOutlook opponent) {
    /**
     * The outlook of a race. Long races are simulated side by side up to the table: {@link SideSimulation}.
     *
     * @param position an unfinished position without contact
     * @param tables what is known
     * @return the outlook, the same each time
     * @throws IllegalArgumentException if there is contact or the game is over
     */
    public static RaceOutlook of(Position position, EndgameTables tables) {
        if (position.contact() || position.finished()) {
            throw new IllegalArgumentException("only an unfinished position without contact is a race");
        }
        int[] planes = position.toPlanes();
        SideSimulation simulation = new SideSimulation(tables.oneSided());
        SideOutlook onRoll = simulation.outlook(planes, 0);
        SideOutlook opponent = simulation.outlook(planes, Planes.SIDE);
        Basis basis = tables.basis(planes, 0);
        if (basis == Basis.ESTIMATED) {
            return new RaceOutlook(basis, combine(onRoll, opponent), onRoll, opponent);
        }
        float[] chances = new float[Outcomes.COUNT];
        new RaceChances(tables).write(basis, planes, 0, chances, 0);
        return new RaceOutlook(basis, Outcomes.of(chances, 0), onRoll, opponent);
    }

    /**
     * The chances from two outlooks: who is off first wins, a gammon if the loser has borne off none, a backgammon if it
     * has a checker in the winner's home. The numbers of the two sides are independent, those of one side are taken so.
     */
    private static Outcomes combine(SideOutlook onRoll, SideOutlook opponent) {
        double win = onRoll.off().atMost(opponent.off());
        double winGammon = Math.min(win, onRoll.off().atMost(opponent.first()));
        double winBackgammon = Math.min(winGammon, onRoll.off().atMost(opponent.away()));
        double lose = 1 - win;
        double loseGammon = Math.min(lose, opponent.off().lessThan(onRoll.first()));
        double loseBackgammon = Math.min(loseGammon, opponent.off().lessThan(onRoll.away()));
        return new Outcomes(
                win - winGammon,
                winGammon - winBackgammon,
                winBackgammon,
                lose - loseGammon,
                loseGammon - loseBackgammon,
                loseBackgammon);
    }
}
