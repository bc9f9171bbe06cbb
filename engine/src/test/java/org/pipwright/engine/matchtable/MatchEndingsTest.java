package org.pipwright.engine.matchtable;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.score.MatchScore;

/** The last rolls of a game of a match, against a separate program and against plain recursion. */
class MatchEndingsTest {
    private static final MatchTable TABLE = ShippedMatchTable.load();

    /** Values are kept to 2.3e-10 and rounded once a roll. */
    private static final double CLOSE = 1e-9;

    /** No values where they are not needed: exact ones do not come from chances. */
    private static final Outcomes UNKNOWN = new Outcomes(0.5, 0, 0, 0.5, 0, 0);

    private static MatchTerms terms(String away, boolean crawford) {
        String[] parts = away.split(",");
        return terms(new MatchScore(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]), crawford));
    }

    private static MatchTerms terms(MatchScore score) {
        return new MatchTerms(new MatchStakes(score), TABLE);
    }

    private static CubeState cube(int value, char owner) {
        return new CubeState(value, owner == 'c' ? CubeOwner.CENTRE : owner == 'm' ? CubeOwner.ME : CubeOwner.THEM);
    }

    private static List<String[]> rows() throws IOException {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                MatchEndingsTest.class.getResourceAsStream("match-endings.tsv"), StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("position"))
                    .map(line -> line.split("\t", -1))
                    .collect(Collectors.toList());
        }
    }

    @Test
    void allRowsOfASeparateProgram() throws IOException {
        List<String[]> rows = rows();
        int doubles = 0;
        for (String[] row : rows) {
            Position position = PositionText.parse(row[0]);
            CubeState cube = cube(Integer.parseInt(row[2]), row[3].charAt(0));
            MatchTerms terms = terms(row[1], row[4].equals("1"));
            String name = String.join(" ", row);
            CubeValues values = terms.exact(position, cube).orElseThrow();
            assertEquals(Double.parseDouble(row[5]), values.noDouble(), 2e-9, name);
            assertEquals(Double.parseDouble(row[8]), values.best(), 2e-9, name);
            assertEquals(!row[6].isEmpty(), values.mayDouble(), name);
            if (values.mayDouble()) {
                doubles++;
                assertEquals(Double.parseDouble(row[6]), values.doubleTake(), 2e-9, name);
                assertEquals(Double.parseDouble(row[7]), values.doublePass(), 2e-9, name);
            }
            assertEquals(values.best(), terms.best(position, UNKNOWN, cube), CLOSE, name);
            assertEquals(values, terms.values(position, UNKNOWN, cube), name);
        }
        assertTrue(rows.size() > 150 && doubles > 80, rows.size() + " rows, " + doubles + " with a double");
    }

    /** Every number against recursion without any of the solver's short cuts, seen from both sides. */
    @ParameterizedTest
    @CsvSource({
        "1, 1, false, 5",
        "1, 2, true, 4",
        "2, 1, false, 4",
        "1, 4, false, 4",
        "2, 2, false, 4",
        "2, 5, false, 4",
        "3, 3, false, 4",
        "4, 2, false, 4",
        "5, 4, false, 4",
        "9, 7, false, 4",
        "25, 11, false, 3"
    })
    void equalToPlainRecursion(int mine, int theirs, boolean crawford, int checkers) {
        SplittableRandom random = new SplittableRandom(100 * mine + theirs);
        MatchScore score = new MatchScore(mine, theirs, crawford);
        NaiveEndings naive = new NaiveEndings(TABLE);
        MatchTerms terms = terms(score);
        for (int i = 0; i < 12; i++) {
            List<Integer> me = side(random, checkers);
            List<Integer> other = side(random, checkers);
            char owner = crawford ? 'c' : "cmt".charAt(random.nextInt(3));
            int value = owner == 'c' ? 1 : 2 << random.nextInt(3);
            CubeState cube = cube(value, owner);
            String name = me + " / " + other + " " + cube;
            Position position = position(me, other);
            CubeValues values = terms.exact(position, cube).orElseThrow();
            assertEquals(naive.rolling(me, other, score, value, owner), values.noDouble(), CLOSE, name);
            assertEquals(naive.best(me, other, score, value, owner), values.best(), CLOSE, name);
            assertEquals(values.best(), terms.known(position, cube).orElseThrow(), CLOSE, name);
            if (values.mayDouble()) {
                assertEquals(naive.rolling(me, other, score, 2 * value, 't'), values.doubleTake(), CLOSE, name);
            }
        }
    }

    /** Told beforehand what will be asked, the solver solves all of it at once, and says the same. */
    @ParameterizedTest
    @CsvSource({"5, 3", "3, 5", "4, 4"})
    void expectedPositionsAreSolvedTogether(int mine, int theirs) {
        SplittableRandom random = new SplittableRandom(10 * mine + theirs);
        MatchScore score = new MatchScore(mine, theirs, false);
        MatchEndings told = ShippedMatchTable.load().endings();
        List<Integer> other = side(random, 5);
        List<Position> afterPlays = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            afterPlays.add(position(other, side(random, 5)));
        }
        List<Position> some = new ArrayList<>(afterPlays);
        some.add(Position.start());
        some.add(position(other, List.of()));
        told.expect(some, score);
        long solved = told.size();
        assertTrue(solved > 0);
        for (Position position : afterPlays) {
            MatchEndings alone = ShippedMatchTable.load().endings();
            MatchStakes stakes = new MatchStakes(score);
            assertEquals(alone.best(position, CubeState.START, stakes), told.best(position, CubeState.START, stakes));
        }
        assertEquals(solved, told.size());
    }

    private static List<Integer> side(SplittableRandom random, int checkers) {
        List<Integer> side = new ArrayList<>();
        for (int n = 1 + random.nextInt(checkers); n > 0; n--) {
            // Mostly low points: long endings cost plain recursion minutes.
            side.add(1 + Math.min(random.nextInt(6), random.nextInt(6)));
        }
        Collections.sort(side);
        return side;
    }

    static Position position(List<Integer> me, List<Integer> other) {
        return Position.of(counts(me), counts(other));
    }

    private static int[] counts(List<Integer> side) {
        int[] counts = new int[Planes.PLACES];
        counts[Planes.OFF] = Position.FULL - side.size();
        side.forEach(point -> counts[point]++);
        return counts;
    }

    /** Without a cube that matters the match is won as often as the last roll says: 5 and 2 are off with 19 throws. */
    @Test
    void aLastRoll() {
        Position position = PositionText.parse("1@5 1@2 / 1@1");
        CubeValues values = terms("2,2", false).exact(position, CubeState.START).orElseThrow();
        double off = 19 / 36.0;
        double win = TABLE.chanceAfter(new MatchScore(2, 2, false), 1);
        assertEquals(off * win + (1 - off) * (1 - win), values.noDouble(), CLOSE);
        assertEquals(off, values.doubleTake(), CLOSE);
        assertEquals(win, values.doublePass(), 1e-12);
        assertTrue(values.shouldDouble());
        assertEquals(CubeAction.TAKE, values.answer());
    }

    /** The values before a roll are the means of what the best plays leave, whatever was asked before. */
    @Test
    void valuesOfBothSidesBelongTogether() {
        MatchTerms terms = terms("4,3", false);
        MatchTerms fresh = terms("4,3", false);
        Position position = PositionText.parse("2@4 1@6 / 2@3 1@5");
        CubeState cube = cube(2, 'm');
        assertEquals(
                terms.swapped().known(position.swapped(), cube.swapped()).orElseThrow(),
                fresh.swapped().known(position.swapped(), cube.swapped()).orElseThrow());
        assertEquals(
                terms.known(position, cube).orElseThrow(),
                fresh.known(position, cube).orElseThrow());
        assertTrue(terms.known(position, cube).orElseThrow() < terms.won(GameResult.SINGLE, cube));
    }

    @ParameterizedTest
    @CsvSource({"start", "15@1 / 6@6", "7@1 / 1@1", "1@7 / 1@1", "5@6 1@25 / 6@1"})
    void whatIsNotCoveredIsLeftToTheModel(String text) {
        String position = text.equals("5@6 1@25 / 6@1") ? "5@6 1@bar / 6@1" : text;
        MatchTerms terms = terms("3,5", false);
        assertFalse(terms.exact(PositionText.parse(position), CubeState.START).isPresent());
        assertFalse(terms.known(PositionText.parse(position), CubeState.START).isPresent());
    }

    /** Between a model that knows one volatility and the exact values lie wrong doubles and wrong answers. */
    @Test
    void noWrongActionWhereTheModelHadThem() {
        SplittableRandom random = new SplittableRandom(21);
        MatchTerms terms = terms("3,3", false);
        int wrong = 0;
        int byModel = 0;
        NaiveEndings naive = new NaiveEndings(TABLE);
        MatchScore score = new MatchScore(3, 3, false);
        for (int i = 0; i < 100; i++) {
            List<Integer> me = side(random, 4);
            List<Integer> other = side(random, 4);
            double roll = naive.rolling(me, other, score, 1, 'c');
            double take = naive.rolling(me, other, score, 2, 't');
            double pass = TABLE.chanceAfter(score, 1);
            CubeValues truth = new CubeValues(true, false, roll, take, pass, take);
            CubeValues exact = terms.values(position(me, other), UNKNOWN, CubeState.START);
            wrong += costs(truth, exact) ? 1 : 0;
            double win = terms("1,1", false)
                    .known(position(me, other), CubeState.START)
                    .orElseThrow();
            CubeValues model = terms.curves(position(me, other), GammonShares.NONE, CubeState.START)
                    .at(win);
            byModel += costs(truth, model) ? 1 : 0;
        }
        assertEquals(0, wrong);
        assertTrue(byModel > 3, String.format(Locale.ROOT, "%d by the model", byModel));
    }

    /** Whether what one set of values makes of the cube loses by another, which is the truth. */
    static boolean costs(CubeValues truth, CubeValues guess) {
        return truth.cost(guess.shouldDouble() ? CubeAction.DOUBLE : CubeAction.ROLL) < -1e-6
                || truth.cost(guess.answer()) < -1e-6;
    }
}
