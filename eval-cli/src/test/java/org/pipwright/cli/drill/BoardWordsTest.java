package org.pipwright.cli.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.pipwright.cli.picture.Scene;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;

/** A board in words has all of the board, and says whose it is. */
class BoardWordsTest {
    @Test
    void theStart() {
        assertEquals(
                "You have 2 on 24, 5 on 13, 3 on 8, 5 on 6; your opponent has 2 on 1, 5 on 12, 3 on 17, 5 on 19;"
                        + " pips 167 against 167; you have rolled 3-1.",
                BoardWords.of(Scene.of(Position.start()).with(Roll.of(3, 1), null)));
    }

    @Test
    void cubeAndScore() {
        Scene scene = new Scene(
                PositionText.parse("14@1 1@bar / 2@2 of 15"),
                new CubeState(2, CubeOwner.THEM),
                new MatchScore(3, 5, false),
                null,
                null,
                true,
                new TreeSet<>(),
                null);
        assertEquals(
                "You have 1 on the bar, 14 on 1; your opponent has 2 on 23, 13 borne off; pips 39 against 4;"
                        + " your opponent owns the cube at 2; 3 away against 5 away.",
                BoardWords.of(scene));
    }

    /** Read back, the words give the position they came from. */
    @Test
    void nothingIsLeftOut() {
        PlayGenerator generator = new PlayGenerator();
        SplittableRandom random = new SplittableRandom(3);
        Position position = Position.start();
        for (int i = 0; i < 3000; i++) {
            assertEquals(position, readBack(BoardWords.of(Scene.of(position))));
            Roll roll = Roll.of(random.nextInt(1, 7), random.nextInt(1, 7));
            int count = generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
            position = Position.ofPlanes(generator.results(), random.nextInt(count) * Planes.STRIDE)
                    .swapped();
            position = position.finished() ? Position.start() : position;
        }
    }

    private static Position readBack(String words) {
        String[] parts = words.split("; ");
        return Position.of(
                counts(parts[0].replace("You have ", ""), false),
                counts(parts[1].replace("your opponent has ", ""), true));
    }

    private static int[] counts(String stacks, boolean opponent) {
        int[] counts = new int[Planes.PLACES];
        for (String stack : stacks.split(", ")) {
            String[] halves = stack.split(" on | borne ");
            int number = Integer.parseInt(halves[0]);
            if (halves[1].equals("the bar")) {
                counts[Planes.BAR] = number;
            } else if (halves[1].equals("off")) {
                counts[Planes.OFF] = number;
            } else {
                int point = Integer.parseInt(halves[1]);
                counts[opponent ? Planes.BAR - point : point] = number;
            }
        }
        return counts;
    }
}
