package org.pipwright.engine.matchtable;

import static java.math.RoundingMode.HALF_UP;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.score.MatchScore;

/** The quick values of match terms against the model solved for each position's own shares. */
class MatchTermsTest {
    private static final int CASES = 150;

    @ParameterizedTest
    @CsvSource({
        "1, 3, false",
        "2, 1, false",
        "3, 1, false",
        "4, 1, true",
        "2, 2, false",
        "2, 4, false",
        "4, 2, false",
        "3, 3, false",
        "5, 5, false",
        "7, 3, false",
        "15, 15, false"
    })
    void quickValuesAreCloseToTheModel(int mine, int theirs, boolean crawford) {
        SplittableRandom random = new SplittableRandom(mine * 100 + theirs);
        MatchTerms terms =
                new MatchTerms(new MatchStakes(new MatchScore(mine, theirs, crawford)), ShippedMatchTable.load());
        double squares = 0;
        for (int i = 0; i < CASES; i++) {
            CubeOwner owner = CubeOwner.values()[crawford ? 0 : random.nextInt(3)];
            CubeState cube = owner == CubeOwner.CENTRE ? CubeState.START : new CubeState(2 << random.nextInt(2), owner);
            Outcomes outcomes = outcomes(random);
            CubeValues exact = terms.curves(Position.start(), GammonShares.of(outcomes), cube)
                    .at(outcomes.win());
            CubeValues quick = terms.values(Position.start(), outcomes, cube);
            assertEquals(exact.mayDouble(), quick.mayDouble());
            assertEquals(exact.doublePass(), quick.doublePass(), 1e-12);
            assertEquals(exact.noDouble(), quick.noDouble(), 0.01, outcomes + " " + cube);
            assertEquals(exact.doubleTake(), quick.doubleTake(), 0.01, outcomes + " " + cube);
            squares += Math.pow(exact.noDouble() - quick.noDouble(), 2);
        }
        assertTrue(Math.sqrt(squares / CASES) < 0.001, "root mean square " + Math.sqrt(squares / CASES));
    }

    /** Whatever lookahead finds. */
    @ParameterizedTest
    @CsvSource({"1, 2, 1, CENTRE", "1, 5, 1, CENTRE", "2, 5, 2, ME", "3, 9, 4, ME"})
    void aDoubleGainsNothingForWhoWinsAnywayAndCostsNothingIfTheOtherDoes(
            int leads, int trails, int value, CubeOwner owner) {
        MatchTable table = ShippedMatchTable.load();
        CubeState cube = new CubeState(value, owner);
        MatchTerms leader = new MatchTerms(new MatchStakes(new MatchScore(leads, trails, false)), table);
        MatchTerms trailer = leader.swapped();
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < CASES; i++) {
            double roll = random.nextDouble();
            double take = random.nextDouble();
            CubeValues ahead = leader.values(cube, state -> state.equals(cube) ? roll : take);
            assertEquals(Math.max(roll, take), ahead.noDouble());
            assertEquals(take, ahead.doubleTake());
            CubeValues behind = trailer.values(cube, state -> state.equals(cube) ? roll : take);
            assertEquals(Math.min(roll, take), behind.noDouble());
            assertEquals(take, behind.doubleTake());
            Outcomes outcomes = outcomes(random);
            CubeValues quick = leader.values(Position.start(), outcomes, cube);
            assertTrue(quick.noDouble() >= quick.doubleTake());
            quick = trailer.values(Position.start(), outcomes, cube);
            assertTrue(quick.noDouble() <= quick.doubleTake());
        }
    }

    /** The shipped table with so few digits that many scores next to each other are alike. */
    private static MatchTable rounded(int digits) {
        StringBuilder text = new StringBuilder();
        for (String row :
                MatchTableCsv.print(ShippedMatchTable.load(), List.of()).split("\n")) {
            String[] cells = row.split(",");
            text.append(cells[0]);
            for (int i = 1; i < cells.length; i++) {
                boolean head = row.startsWith("away");
                text.append(',').append(head ? cells[i] : new BigDecimal(cells[i]).setScale(digits, HALF_UP));
            }
            text.append('\n');
        }
        return MatchTableCsv.parse(text.toString());
    }

    /** A point always has a worth to divide costs by, and as that of a single game where this decides something. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void aPointIsWorthSomethingByAnyTable(int digits) {
        MatchTable table = rounded(digits);
        int alike = 0;
        for (int mine = 1; mine <= table.length(); mine++) {
            for (int theirs = 1; theirs <= table.length(); theirs++) {
                MatchTerms terms = new MatchTerms(new MatchStakes(new MatchScore(mine, theirs, false)), table);
                for (int value = 1; value <= 32; value *= 2) {
                    CubeState cube = new CubeState(value, value == 1 ? CubeOwner.CENTRE : CubeOwner.ME);
                    double single = terms.after(value) - terms.after(-value);
                    double point = terms.point(cube);
                    assertTrue(point > 1e-9 && point <= 0.5, mine + " " + theirs + " " + cube + ": " + point);
                    if (single > 1e-9) {
                        assertEquals(single / 2, point, 1e-12);
                    } else {
                        alike++;
                        assertTrue(GammonValues.of(terms, cube).isEmpty());
                    }
                }
            }
        }
        assertTrue(digits > 2 || alike > 0);
    }

    /** By hand: at 0.50 everywhere but at the end of the match, the first cube that decides is the one that ends it. */
    @Test
    void aPointIsAShareOfTheFirstCubeThatDecides() {
        MatchTable even = MatchTableCsv.parse("away,1,2,3,4,5\n1,.5,.5,.5,.5,.5\n2,.5,.5,.5,.5,.5\n"
                + "3,.5,.5,.5,.5,.5\n4,.5,.5,.5,.5,.5\n5,.5,.5,.5,.5,.5\nafter crawford,.5,.5,.5,.5,.5\n");
        MatchTerms terms = new MatchTerms(new MatchStakes(new MatchScore(5, 4, false)), even);
        // A cube at 4 loses the match (0) or leaves 1-away against 4-away (0.5).
        assertEquals(0.5 / 8, terms.point(CubeState.START), 1e-12);
        assertEquals(0.5 / 4, terms.point(new CubeState(2, CubeOwner.ME)), 1e-12);
        assertEquals(0.5 / 2, terms.point(new CubeState(4, CubeOwner.ME)), 1e-12);
        assertEquals(0.5, terms.point(new CubeState(8, CubeOwner.ME)), 1e-12);
    }

    /** Chances such as occur: up to half of the games gammons, few backgammons. */
    private static Outcomes outcomes(SplittableRandom random) {
        double win = random.nextDouble(0.05, 0.95);
        double gammon = random.nextDouble(0.5);
        double backgammon = random.nextDouble(0.05);
        double lostGammon = random.nextDouble(0.5);
        double lostBackgammon = random.nextInt(2) * random.nextDouble(0.05);
        return new Outcomes(
                win * (1 - gammon - backgammon),
                win * gammon,
                win * backgammon,
                (1 - win) * (1 - lostGammon - lostBackgammon),
                (1 - win) * lostGammon,
                (1 - win) * lostBackgammon);
    }
}
