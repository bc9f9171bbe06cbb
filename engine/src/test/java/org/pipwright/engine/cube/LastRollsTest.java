package org.pipwright.engine.cube;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

@Tag("fast")
class LastRollsTest {
    private static boolean off(Position position) {
        return position.borneOff() == position.checkers();
    }

    private static boolean offWith(Position position, Roll roll) {
        return Plays.legal(position, roll).stream().map(Play::result).anyMatch(LastRollsTest::off);
    }

    /** After a play the same side once more, as if the other had passed. */
    private static boolean offWithAny(Position position) {
        return off(position) || Roll.all().stream().allMatch(roll -> offWith(position, roll));
    }

    private static boolean offWithTwo(Position position) {
        return Roll.all().stream()
                .allMatch(roll ->
                        Plays.legal(position, roll).stream().map(Play::result).anyMatch(LastRollsTest::offWithAny));
    }

    private static double opponentOff(Position position) {
        Position other = position.swapped();
        return Roll.all().stream()
                        .filter(roll -> offWith(other, roll))
                        .mapToInt(Roll::ways)
                        .sum()
                / 36.0;
    }

    private static String side(SplittableRandom random) {
        StringBuilder text = new StringBuilder();
        for (int point = 1; point <= 6; point++) {
            int count = random.nextInt(3) / 2 * random.nextInt(1, 4);
            text.append(count > 0 ? count + "@" + point + " " : "");
        }
        return text.isEmpty() ? "1@1 " : text.toString();
    }

    /** Of few checkers, so that all answers come up; each play of each roll is looked at. */
    @Test
    void areThoseOfAllPlays() {
        SplittableRandom random = new SplittableRandom(5);
        int two = 0;
        int sometimes = 0;
        for (int i = 0; i < 150; i++) {
            Position position = PositionText.parse(side(random) + "/ " + side(random));
            LastRolls rolls = LastRolls.of(position);
            assertEquals(offWithTwo(position), rolls.offWithTwo(), position.toString());
            assertEquals(opponentOff(position), rolls.opponentOff(), 1e-12, position.toString());
            two += rolls.offWithTwo() ? 1 : 0;
            sometimes += rolls.opponentOff() > 0 && rolls.opponentOff() < 1 ? 1 : 0;
        }
        assertTrue(two > 15 && two < 135, two + " off with two rolls");
        assertTrue(sometimes > 15, sometimes + " off with some rolls");
    }
}
