package org.pipwright.cli.report;

import java.util.Optional;
import java.util.function.Supplier;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.ExactRace;
import org.pipwright.engine.bearoff.RaceOutlook;
import org.pipwright.engine.measures.Crossovers;
import org.pipwright.engine.measures.KeithCount;
import org.pipwright.engine.measures.PipRace;
import org.pipwright.engine.measures.Shots;
import org.pipwright.engine.measures.Structure;
import org.pipwright.engine.position.Position;

/**
 * What {@code count} has to say.
 *
 * @param position the position, unfinished
 * @param onRoll the side on roll
 * @param opponent the opponent, as it sees itself
 * @param race measures of a race; empty while there is contact
 */
public record CountReport(Position position, Side onRoll, Side opponent, Optional<Race> race) {
    /**
     * One side's facts.
     *
     * @param pips its pip count
     * @param crossovers crossovers it needs
     * @param structure how its checkers stand
     * @param shots the rolls that hit, if it is on roll or were
     */
    public record Side(int pips, Crossovers crossovers, Structure structure, Shots shots) {
        private static Side of(Position seen) {
            int[] planes = seen.toPlanes();
            return new Side(seen.pips(), Crossovers.of(planes, 0), Structure.of(planes, 0), Shots.of(seen));
        }
    }

    /**
     * A race.
     *
     * @param outlook distributions and chances
     * @param keith the Keith count
     * @param bare all races of bare pips up to those of the sides
     * @param exact values of the two-sided table, if it covers the race
     */
    public record Race(RaceOutlook outlook, KeithCount keith, PipRace bare, Optional<ExactRace> exact) {}

    /**
     * Counts a position.
     *
     * @param position an unfinished position
     * @param tables gives what is known of races; asked if this is one
     * @return all facts
     */
    public static CountReport of(Position position, Supplier<EndgameTables> tables) {
        Optional<Race> race = position.contact() ? Optional.empty() : Optional.of(race(position, tables.get()));
        return new CountReport(position, Side.of(position), Side.of(position.swapped()), race);
    }

    private static Race race(Position position, EndgameTables tables) {
        RaceOutlook outlook = RaceOutlook.of(position, tables);
        PipRace bare = new PipRace(Math.max(position.pips(), position.opponentPips()));
        return new Race(outlook, KeithCount.of(position), bare, tables.exact(position));
    }
}
