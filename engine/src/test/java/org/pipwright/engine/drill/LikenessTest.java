package org.pipwright.engine.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.play.RandomWalk;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;

/** Counting checkers that stand elsewhere. */
class LikenessTest {
    @ParameterizedTest
    @CsvSource({
        "start, start, 0",
        // One checker of one side.
        "start, 4@6 1@5 3@8 5@13 2@24 / start, 1",
        // Two of one side, one of the other.
        "4@6 1@5 3@8 5@13 2@24 / start, 5@6 3@8 4@13 1@11 2@24 / 5@6 3@8 5@13 1@24 1@bar, 3"
    })
    void counts(String a, String b, int apart) {
        assertEquals(apart, Likeness.checkersApart(read(a), read(b)));
    }

    private static Position read(String text) {
        return PositionText.parse(text.replace("/ start", "/ 5@6 3@8 5@13 2@24"));
    }

    /** The places of a side's checkers in order: moving the fewest means pairing off those that both have. */
    private static int naive(Position a, Position b) {
        return unpaired(places(a), places(b)) + unpaired(places(a.swapped()), places(b.swapped()));
    }

    private static List<Integer> places(Position position) {
        List<Integer> places = new ArrayList<>();
        for (int place = 0; place < Planes.PLACES; place++) {
            for (int i = 0; i < position.count(place); i++) {
                places.add(place);
            }
        }
        return places;
    }

    private static int unpaired(List<Integer> some, List<Integer> others) {
        List<Integer> rest = new ArrayList<>(others);
        some.forEach(place -> rest.remove((Object) place));
        return rest.size();
    }

    @Test
    void isAMetricThatAgreesWithPairingOff() {
        RandomWalk walk = new RandomWalk(Position.FULL, 5);
        Position first = walk.next();
        Position second = walk.next();
        for (int i = 0; i < 5000; i++) {
            Position third = walk.next();
            int apart = Likeness.checkersApart(first, third);
            assertEquals(naive(first, third), apart);
            assertEquals(apart, Likeness.checkersApart(third, first));
            assertEquals(apart == 0, first.equals(third));
            assertTrue(apart <= Likeness.checkersApart(first, second) + Likeness.checkersApart(second, third));
            first = second;
            second = third;
        }
    }

    /** A play moves one to four checkers, and puts those it hits on the bar. */
    @Test
    void aPlayChangesFewCheckers() {
        RandomWalk walk = new RandomWalk(Position.FULL, 6);
        for (Position position : walk.next(300)) {
            for (Play play : Plays.legal(position, walk.roll())) {
                int hits = play.result().opponentCount(Planes.BAR) - position.opponentCount(Planes.BAR);
                int apart = Likeness.checkersApart(position, play.result());
                assertTrue(apart <= play.steps().size() + hits, play::toString);
                assertEquals(play.steps().isEmpty(), apart == 0);
            }
        }
    }
}
