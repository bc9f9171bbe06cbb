package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;

class RaceOutlookTest {
    private final EndgameTables tables = Tables.standard();

    private RaceOutlook outlook(String text) {
        return RaceOutlook.of(PositionText.parse(text), tables);
    }

    @Test
    void saysWhatItRestsOn() {
        assertEquals(Basis.EXACT, outlook("1@6 / 1@6").basis());
        assertEquals(0.8125, outlook("1@6 / 1@6").outcomes().win(), 1e-6);
        assertEquals(Basis.DISTRIBUTIONS, outlook("15@6 / 15@6").basis());
        RaceOutlook mixed = outlook("5@6 5@7 5@8 / 15@6");
        assertEquals(Basis.SIMULATED, mixed.basis());
        assertEquals(Basis.SIMULATED, mixed.onRoll().basis());
        assertEquals(Basis.DISTRIBUTIONS, mixed.opponent().basis());
        assertThrows(IllegalArgumentException.class, () -> outlook("start"));
        assertThrows(IllegalArgumentException.class, () -> outlook("off / 1@6"));
    }

    /** Few checkers are known wherever they stand: nothing is simulated, and the chances are those of wider tables. */
    @ParameterizedTest
    @CsvSource({
        "2@7 1@10 / 3@9, EXACT",
        "1@12 1@2 / 2@8 1@1, EXACT",
        "2@7 2@10 / 3@9, DISTRIBUTIONS",
        "2@7 1@8 / 5@6 5@5 5@4, DISTRIBUTIONS"
    })
    void fewCheckersAreNotCalledSimulated(String race, Basis basis) {
        RaceOutlook outlook = outlook(race);
        assertEquals(basis, outlook.basis());
        assertEquals(0, outlook.onRoll().error() + outlook.opponent().error());
        assertEquals(Basis.DISTRIBUTIONS, outlook.onRoll().basis());
    }

    @Test
    void fewCheckersAreAsInWiderTables() {
        EndgameTables wide = EndgameTables.of(Tables.oneSided(16, 4), Tables.twoSided());
        RaceOutlook exact = RaceOutlook.of(PositionText.parse("2@7 2@10 / 3@9"), wide);
        assertEquals(
                exact.outcomes().win(), outlook("2@7 2@10 / 3@9").outcomes().win(), 1e-6);
    }

    /** Simulated sides against exact tables of more points, which the simulation does not see. */
    @ParameterizedTest
    @CsvSource({"10,6,0.04,0.008", "16,4,0.06,0.01"})
    void simulationAgainstWiderTables(int points, int checkers, double rolls, double chance) {
        EndgameTables wide = EndgameTables.of(Tables.oneSided(points, checkers), Tables.twoSided());
        SplittableRandom random = new SplittableRandom(points);
        double squares = 0;
        double excess = 0;
        int games = 25;
        for (int n = 0; n < games; n++) {
            int[] planes = new int[Planes.STRIDE];
            scatter(planes, 0, checkers, points, random);
            scatter(planes, Planes.SIDE, checkers, 25 - points < points ? 24 - points : points, random);
            Position position = Position.ofPlanes(planes, 0);
            RaceOutlook simulated = RaceOutlook.of(position, tables);
            RaceOutlook exact = RaceOutlook.of(position, wide);
            squares += Math.pow(simulated.outcomes().win() - exact.outcomes().win(), 2) / games;
            excess += (simulated.onRoll().off().mean() - exact.onRoll().off().mean()) / games;
        }
        assertTrue(Math.sqrt(squares) < chance, "win chances off by " + Math.sqrt(squares));
        assertTrue(Math.abs(excess) < rolls, "means off by " + excess);
    }

    private static void scatter(int[] planes, int at, int checkers, int points, SplittableRandom random) {
        for (int n = 0; n < Position.FULL; n++) {
            Planes.add(planes, at, n < checkers ? 1 + random.nextInt(points) : Planes.OFF);
        }
    }

    /** A loser who cannot move away in time loses a backgammon; one roll of any kind ends this game. */
    @Test
    void backgammonsAreSeen() {
        Outcomes sure = outlook("2@1 / 15@23").outcomes();
        assertEquals(1, sure.winBackgammon(), 1e-9);
        Outcomes later = outlook("1@4 4@1 / 1@20 14@18").outcomes();
        assertTrue(later.winGammon() > 0.5 && later.winBackgammon() < 0.5);
        Outcomes lost = outlook("1@20 14@18 / 2@1").outcomes();
        assertEquals(0, lost.loseBackgammon(), 1e-9);
        assertEquals(1, lost.loseBackgammon() + lost.loseGammon(), 1e-9);
    }

    /**
     * One roll to save the gammon: a six, a total of seven, 2-2 and 3-3 bring the last checker home and bear one off, 17
     * throws of 36; a side in danger of the gammon plays for just that.
     */
    @Test
    void aCheckerBorneOffOnTheWaySavesTheGammon() {
        double gammon = outlook("14@6 1@7 / 1@1").outcomes().loseGammon();
        assertEquals(19 / 36.0, gammon, 1e-6);
    }

    /**
     * One roll to save the backgammon: a five or a six for the rear checker and anything for the other, 2-2, 3-3 or 4-4,
     * 23 throws of 36.
     */
    @Test
    void aSideInDangerOfTheBackgammonRunsFirst() {
        Outcomes lost = outlook("1@23 1@19 13@18 / 1@1").outcomes();
        assertEquals(13 / 36.0, lost.loseBackgammon(), 1e-6);
        assertEquals(23 / 36.0, lost.loseGammon(), 1e-6);
    }

    /** Gammons against a table of one point more, of sides that bear off their first checker as soon as they can. */
    @Test
    void gammonsAgainstAWiderTable() {
        EndgameTables wide = EndgameTables.of(Tables.oneSided(7, 15), Tables.twoSided());
        SplittableRandom random = new SplittableRandom(5);
        double squares = 0;
        int live = 0;
        for (int n = 0; n < 40; n++) {
            int[] planes = new int[Planes.STRIDE];
            scatter(planes, 0, Position.FULL, 7, random);
            scatter(planes, Planes.SIDE, 1 + random.nextInt(6), 7, random);
            Position position = Position.ofPlanes(planes, 0);
            double exact = RaceOutlook.of(position, wide).outcomes().loseGammon();
            squares += Math.pow(RaceOutlook.of(position, tables).outcomes().loseGammon() - exact, 2) / 40;
            live += exact > 0.01 && exact < 0.99 ? 1 : 0;
        }
        assertTrue(live > 10, live + " gammons that may go either way");
        assertTrue(Math.sqrt(squares) < 0.004, "gammons off by " + Math.sqrt(squares));
    }

    /** One judge for all, which keeps sides, and one for each race. */
    @Test
    void aJudgeOfManyRacesSaysTheSame() {
        RaceJudge judge = new RaceJudge(tables);
        SplittableRandom random = new SplittableRandom(6);
        for (int n = 0; n < 12; n++) {
            int[] planes = new int[Planes.STRIDE];
            scatter(planes, 0, Position.FULL - n % 2, 8 + n % 3, random);
            scatter(planes, Planes.SIDE, 1 + random.nextInt(15), 8, random);
            Position position = Position.ofPlanes(planes, 0);
            RaceOutlook alone = RaceOutlook.of(position, tables);
            assertEquals(alone.outcomes(), judge.outlook(position).outcomes());
            assertEquals(alone.outcomes(), judge.outlook(position).outcomes(), "again");
            RaceOutlook swapped = RaceOutlook.of(position.swapped(), tables);
            assertEquals(swapped.outcomes(), judge.outlook(position.swapped()).outcomes());
        }
    }

    @Test
    void answersRepeat() {
        assertEquals(outlook("5@8 / 5@8").outcomes(), outlook("5@8 / 5@8").outcomes());
    }

    /** By hand: in a tenth of the cases one roll fewer, but never fewer than it takes at best. */
    @Test
    void soonerInSomeCases() {
        RollSpread sooner = new RollSpread(1, 0.75, 0.25, 0.125).sooner(0.1);
        assertEquals(1, sooner.moreThan(0));
        assertEquals(0.7, sooner.moreThan(1), 1e-12);
        assertEquals(0.2375, sooner.moreThan(2), 1e-12);
        assertEquals(0.1125, sooner.moreThan(3), 1e-12);
        assertEquals(0, sooner.moreThan(4));
    }

    /** P(A <= B) and P(A < B) summed over all pairs. */
    @Test
    void comparisonsOfSpreads() {
        RollSpread a = new RollSpread(1, 0.75, 0.25, 0.125);
        RollSpread b = new RollSpread(1, 1, 0.5);
        double atMost = 0;
        double less = 0;
        for (int x = 0; x < 8; x++) {
            for (int y = 0; y < 8; y++) {
                double both = a.exactly(x) * b.exactly(y);
                atMost += x <= y ? both : 0;
                less += x < y ? both : 0;
            }
        }
        assertEquals(atMost, a.atMost(b), 1e-12);
        assertEquals(less, a.lessThan(b), 1e-12);
        assertEquals(1, new RollSpread().atMost(a));
        assertEquals(1, new RollSpread().lessThan(a));
        assertEquals(0, a.atMost(new RollSpread()));
    }
}
