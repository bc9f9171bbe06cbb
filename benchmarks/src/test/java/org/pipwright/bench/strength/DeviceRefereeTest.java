package org.pipwright.bench.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.training.device.DeviceAgreement;
import org.pipwright.training.device.DeviceRollouts;
import org.pipwright.training.device.RolledGame;
import org.pipwright.training.device.RolledGames;

/** Which games a device is given, and what is made of them. */
class DeviceRefereeTest {
    private static final List<Decision> DECISIONS = List.of(
            new Decision(1, Regime.OPENING, "5@6 3@8 5@13 2@24 / 5@6 3@8 5@13 2@24", "3-1", "a v b"),
            new Decision(2, Regime.RACE, "2@5 2@6 / 3@4 1@1", "4-3", "a v b"),
            new Decision(3, Regime.RACE, "1@1 1@2 / 1@1", "2-1", "b v a"),
            new Decision(4, Regime.OPENING, "5@6 3@8 5@13 2@24 / 5@6 3@8 5@13 2@24", "6-2", "a v b"));

    private static ReferenceHeader header(int trials) {
        return new ReferenceHeader(ReferenceHeader.KIND, "0", "net", "0", 7, 1, 8, trials, 0.002, 0.12, 0.04, null);
    }

    /** What each position is truly worth to the side on roll: anything, but always the same. */
    private static double truth(Position position) {
        return position.finished() ? -1 : new Random(position.hashCode()).nextInt(1000) / 4000.0;
    }

    /** Games whose noise is shared by the plays of a trial but for a part. */
    private static final class Noisy implements DeviceRollouts {
        private final Random random = new Random(5);
        private final int atOnce;

        Noisy(int atOnce) {
            this.atOnce = atOnce;
        }

        @Override
        public String description() {
            return "noise";
        }

        @Override
        public double[] lookahead(List<Position> positions) {
            return positions.stream().mapToDouble(DeviceRefereeTest::truth).toArray();
        }

        @Override
        public void play(RolledGames games) {
            List<RolledGame> underWay = new ArrayList<>();
            while (!games.done()) {
                Optional<RolledGame> next = games.next();
                while (next.isPresent() && underWay.size() < atOnce) {
                    underWay.add(next.get());
                    next = underWay.size() < atOnce ? games.next() : Optional.empty();
                }
                assertFalse(underWay.isEmpty(), "nothing to do, and not done");
                Collections.shuffle(underWay, random);
                List<RolledGame> over = underWay.subList(underWay.size() / 2, underWay.size());
                over.forEach(game -> games.ended(game, value(game)));
                over.clear();
            }
            assertEquals(0, underWay.size());
        }

        @Override
        public DeviceAgreement agreement() {
            return DeviceAgreement.ON_THREADS;
        }

        private double value(RolledGame game) {
            double shared = game.dice().get().index() / 20.0 - 0.5;
            return truth(game.start()) + shared + 0.03 * random.nextGaussian();
        }
    }

    private static List<Reference> judged(int trials, BooleanSupplier stop) {
        List<Reference> known = new ArrayList<>();
        new DeviceReferee(new Noisy(500), header(trials), stop).judge(DECISIONS, known::add);
        return known;
    }

    @Test
    void everyDecisionIsKnownWellEnough() {
        List<Reference> references = judged(100_000, () -> false);
        assertEquals(4, references.size());
        for (Reference reference : references) {
            assertTrue(header(0).exactEnough(reference), reference::toString);
            assertEquals(0, reference.plays().get(0).behind());
            assertTrue(reference.trials() % 36 == 0 && reference.trials() >= RolledDecision.FIRST);
            againstTheTruth(reference);
        }
    }

    private static void againstTheTruth(Reference reference) {
        Decision decision = DECISIONS.get(reference.id() - 1);
        List<Play> plays = Plays.legal(decision.board(), decision.dice());
        assertEquals(plays.size(), reference.plays().size() + reference.others().size());
        double best = Double.NEGATIVE_INFINITY;
        for (Play play : plays) {
            best = Math.max(best, worth(play));
        }
        for (Play play : plays) {
            OptionalDouble loss = reference.loss(play.toString());
            assertEquals(best - worth(play), loss.orElseThrow(), 0.04, play + " in " + reference);
        }
        // Errors are those of a right estimate: the sum of squares of this many is hardly ever as large.
        double squares = 0;
        for (Reference.Rolled rolled : reference.plays()) {
            Play play = plays.stream()
                    .filter(p -> p.toString().equals(rolled.play()))
                    .findAny()
                    .orElseThrow();
            double off = rolled.behind() - (worth(play) - best);
            squares += rolled.error() == 0 ? 0 : off * off / (rolled.error() * rolled.error());
        }
        assertTrue(squares < 10 + 3 * reference.plays().size(), "sum of squares " + squares);
    }

    private static double worth(Play play) {
        return -truth(play.next());
    }

    /** Where plays are close, more games are played; where they aren't, fewer; and never more than allowed. */
    @Test
    void gamesGoWhereTheyAreNeeded() {
        for (Reference reference : judged(180, () -> false)) {
            assertTrue(reference.trials() <= 180, reference::toString);
        }
        List<Reference> references = judged(100_000, () -> false);
        assertTrue(references.stream().anyMatch(reference -> reference.trials() > 200), references::toString);
        assertTrue(
                references.stream().anyMatch(reference -> reference.trials() == RolledDecision.FIRST),
                references::toString);
    }

    /** After a stop nothing new begins, and what is known by then is told. */
    @Test
    void aStopLeavesWhatIsKnown() {
        int[] asked = {0};
        List<Reference> known = judged(100_000, () -> asked[0]++ > 6);
        assertTrue(known.size() < 4, known::toString);
        known.forEach(reference -> assertTrue(header(0).exactEnough(reference), reference::toString));
        assertEquals(List.of(), judged(100_000, () -> true));
    }

    @Test
    void largerDifferencesMayHaveLargerErrors() {
        ReferenceHeader header = header(1);
        assertTrue(header.exactEnough(-0.1, 0.004));
        assertFalse(header.exactEnough(-0.1, 0.0041));
        assertTrue(header.exactEnough(-0.01, 0.002));
        assertFalse(header.exactEnough(-0.01, 0.0021));
    }
}
