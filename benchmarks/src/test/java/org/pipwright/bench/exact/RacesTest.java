package org.pipwright.bench.exact;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.pipwright.bench.games.Players;
import org.pipwright.bench.strength.Chooser;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.ExactFirstEvaluator;
import org.pipwright.engine.bearoff.OneSidedTable;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableHorizon;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.reduced.ReducedGame;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Judgement;
import org.pipwright.models.ModelCatalog;

class RacesTest {
    private static final Model MODEL = ModelCatalog.shipped().load("fifth");

    /** Errors worked by hand: 0.1 and 0.3 of a win, 0.3 and 0 of a gammon won and 0.1 twice of one lost. */
    @Test
    void errors() {
        ChanceErrors errors = new ChanceErrors();
        errors.add(new Outcomes(0.3, 0.2, 0.1, 0.3, 0.1, 0), new Outcomes(0.5, 0, 0, 0.5, 0, 0));
        errors.add(new Outcomes(0.8, 0, 0, 0.2, 0, 0), new Outcomes(0.5, 0, 0, 0.4, 0.1, 0));
        // Equity: 0.5 against 0, and 0.6 against -0.1.
        // Win: root of (0.01 + 0.09) / 2; gammon: root of (0.09 + 0.01 + 0 + 0.01) / 4; backgammon: root of 0.01 / 4.
        assertEquals("0.2236, 0.3000 | 0.1658, 0.3000 | 0.0500, 0.1000 | 0.6000, 0.7000", errors.toString());
    }

    @Test
    void racesAreWhatTheySay() {
        SplittableRandom random = new SplittableRandom(3);
        ReducedGame two = new ReducedGame(2);
        for (int n = 0; n < 500; n++) {
            race(RandomRace.of(random, 6, 1, 6), 6 * 6, 6 * 6);
            race(RandomRace.of(random, 8, 15, 15), 15 * 8, 15 * 8);
            race(RandomRace.gammonish(random, 8), 15 * 8, 15 * 8);
            race(RandomRace.ofTwo(random, two), 2 * 25, 2 * 25);
        }
    }

    private static void race(Position position, int mostPips, int opponentsMost) {
        assertFalse(position.contact() || position.finished());
        assertEquals(position.pips(), Math.min(position.pips(), mostPips));
        assertEquals(position.opponentPips(), Math.min(position.opponentPips(), opponentsMost));
    }

    /** The start and 3-1 by a made-up judge: one play is worth 0.2, one 0.05, all others 0.1 points. */
    @Test
    void whatPlaysLoseIsAddedUp() {
        Roll roll = Roll.of(3, 1);
        Play best = PlayText.parse("8/5 6/5", Position.start(), roll);
        Play worst = PlayText.parse("24/20", Position.start(), roll);
        Function<Position, Outcomes> judge = next -> {
            double equity = next.equals(best.next()) ? 0.2 : next.equals(worst.next()) ? 0.05 : 0.1;
            return new Outcomes((1 - equity) / 2, 0, 0, (1 + equity) / 2, 0, 0);
        };
        RaceChoices choices = new RaceChoices();
        choices.add(Position.start(), roll, (position, dice) -> worst.result(), judge);
        choices.add(Position.start(), roll, RaceChoices.by(judge), judge);
        // Forced: no choice.
        choices.add(PositionText.parse("1@1 / 1@1"), roll, (position, dice) -> position, judge);
        assertEquals("0.07500, 0.15000 (2 choices)", choices.toString());
    }

    @Test
    void gamesBringRaces() {
        PlayedRaces races = PlayedRaces.of(Knowledge.of(MODEL)::judgement, 30, 2, 1);
        assertEquals(races, PlayedRaces.of(Knowledge.of(MODEL)::judgement, 30, 2, 2));
        assertEquals(30, races.begun().size());
        assertTrue(races.games() >= 30);
        for (Position position : races.begun()) {
            assertFalse(position.contact() || position.finished());
        }
        assertTrue(
                races.near().size() > 20 && races.near().size() <= 30,
                "near " + races.near().size());
        races.near().forEach(position -> race(position, 15 * 8, 15 * 8));
        assertFalse(races.covered().isEmpty());
        for (PlayedRaces.Decision decision : races.covered()) {
            assertEquals(Basis.EXACT, EndgameTables.standardBasis(decision.position()));
            assertTrue(Plays.legal(decision.position(), decision.roll()).size() > 1);
        }
    }

    /** With the tables nothing is lost where they are exact, by their values read one by one; the net alone loses some. */
    @Test
    void tablesLoseNothingWhereTheyAreExact() {
        EndgameTables tables = EndgameTables.of(
                OneSidedTable.build(EndgameTables.HOME, 1, TableProgress.NONE),
                TwoSidedTable.build(EndgameTables.LAST_SIX, 1, TableProgress.NONE));
        NetworkEvaluator net = new NetworkEvaluator(MODEL);
        Function<Position, Outcomes> exact = position -> {
            int[] planes = position.toPlanes();
            if (position.finished()) {
                return net.evaluate(position);
            }
            SideIndex side = EndgameTables.LAST_SIX;
            double win = tables.twoSided()
                    .value(side.of(planes, 0), side.of(planes, Planes.SIDE))
                    .win();
            return new Outcomes(win, 0, 0, 1 - win, 0, 0);
        };
        PlayedRaces races = PlayedRaces.of(Knowledge.of(MODEL)::judgement, 400, 3, 1);
        for (int lookahead = 0; lookahead <= 1; lookahead++) {
            RaceChoices with = new RaceChoices();
            RaceChoices without = new RaceChoices();
            Judgement judgement =
                    new Judgement(new ExactFirstEvaluator(tables, net), new TableHorizon(tables, Basis.EXACT));
            Chooser byTables = Chooser.byPlayer(Players.of(judgement, lookahead));
            Chooser byNet = Chooser.byPlayer(Players.of(Judgement.by(new NetworkEvaluator(MODEL)), lookahead));
            for (PlayedRaces.Decision each : races.covered()) {
                with.add(each.position(), each.roll(), byTables, exact);
                without.add(each.position(), each.roll(), byNet, exact);
            }
            assertTrue(with.count() > 50, "only " + with.count());
            assertEquals(0, with.worst(), 1e-6);
            assertTrue(without.worst() > 1e-4, without.toString());
        }
    }
}
