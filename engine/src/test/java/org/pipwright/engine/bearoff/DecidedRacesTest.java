package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/** Races that are over with the next two rolls of a side, against games played to their ends, play by play. */
class DecidedRacesTest {
    private final EndgameTables tables = Tables.standard();

    private void compare(Outcomes expected, Position race) {
        RaceOutlook found = RaceOutlook.of(race, tables);
        assertEquals(Basis.EXACT, found.basis(), () -> PositionText.print(race));
        Outcomes outcomes = found.outcomes();
        assertEquals(expected.winSingle(), outcomes.winSingle(), 1e-6);
        assertEquals(expected.winGammon(), outcomes.winGammon(), 1e-6);
        assertEquals(expected.winBackgammon(), outcomes.winBackgammon(), 1e-6);
        assertEquals(expected.loseSingle(), outcomes.loseSingle(), 1e-6);
        assertEquals(expected.loseGammon(), outcomes.loseGammon(), 1e-6);
        assertEquals(expected.loseBackgammon(), outcomes.loseBackgammon(), 1e-6);
    }

    /** Counted by hand, in thirty-sixths: singles, gammons and backgammons lost by the side on roll. */
    @ParameterizedTest
    @CsvSource({
        // Two stragglers have to move five pips each: 3-3, 4-4, 5-5, 6-6 and 6-5 do it.
        "3@1 3@2 3@3 2@4 2@18 2@23 / 1@1, 0, 6, 30",
        // Home and a checker off: every roll but 3-2 and 4-2.
        "14@1 1@7 / 2@1, 32, 4, 0",
        // One straggler has to move four pips, the other five: 6-5, 6-4, 5-4 and the doubles from 3-3.
        "13@1 1@22 1@23 / 2@1, 0, 10, 26"
    })
    void asCountedByHand(String race, int single, int gammon, int backgammon) {
        compare(new Outcomes(0, 0, 0, single / 36.0, gammon / 36.0, backgammon / 36.0), PositionText.parse(race));
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void asGamesPlayedOut(boolean loserOnRoll) {
        SplittableRandom random = new SplittableRandom(loserOnRoll ? 51 : 52);
        Map<Position, double[]> known = new HashMap<>();
        int undecided = 0;
        for (int i = 0; i < 40; i++) {
            Position race = race(random);
            double[] lost = played(loserOnRoll ? race : race.swapped(), loserOnRoll, known);
            compare(
                    loserOnRoll
                            ? new Outcomes(0, 0, 0, lost[0], lost[1], lost[2])
                            : new Outcomes(lost[0], lost[1], lost[2], 0, 0, 0),
                    loserOnRoll ? race : race.swapped());
            undecided += Math.max(lost[0], Math.max(lost[1], lost[2])) < 1 - 1e-9 ? 1 : 0;
        }
        assertTrue(undecided > 15, "races with more than one end: " + undecided);
    }

    /** A loser that is nearly home, or whose last checkers are still in the winner's home, which has two to four left. */
    private static Position race(SplittableRandom random) {
        int[] loser = new int[Planes.PLACES];
        int far = random.nextInt(1, 4);
        int nearest = random.nextBoolean() ? 7 : 16;
        for (int k = 0; k < far; k++) {
            loser[random.nextInt(nearest, nearest + 8)]++;
        }
        loser[random.nextInt(1, 3)] += 15 - far;
        int[] winner = new int[Planes.PLACES];
        winner[1] = random.nextInt(2, 5);
        winner[0] = 15 - winner[1];
        return Position.of(loser, winner);
    }

    /** Five checkers may need three rolls, and eight can be off before three are. */
    @ParameterizedTest
    @ValueSource(strings = {"14@1 1@7 / 5@1", "7@1 1@7 / 3@1"})
    void othersAreAsTheyWere(String race) {
        assertNotEquals(
                Basis.EXACT, RaceOutlook.of(PositionText.parse(race), tables).basis());
    }

    /** How often each result comes: the winner plays for the most points, the loser for the fewest. */
    private static double[] played(Position position, boolean loserOnRoll, Map<Position, double[]> known) {
        if (known.containsKey(position)) {
            return known.get(position);
        }
        double[] mean = new double[3];
        for (Roll roll : Roll.all()) {
            double[] best = null;
            for (Play play : Plays.legal(position, roll)) {
                double[] end = new double[3];
                if (play.result().finished()) {
                    end[GameResult.of(play.result()).points() - 1] = 1;
                } else {
                    end = played(play.next(), !loserOnRoll, known);
                }
                if (best == null || (points(end) > points(best)) != loserOnRoll && points(end) != points(best)) {
                    best = end;
                }
            }
            for (int k = 0; k < 3; k++) {
                mean[k] += roll.probability() * best[k];
            }
        }
        known.put(position, mean);
        return mean;
    }

    private static double points(double[] ends) {
        return ends[0] + 2 * ends[1] + 3 * ends[2];
    }
}
