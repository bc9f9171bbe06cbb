package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.roll.Roll;

/** What becomes of positions whose plays find no room. */
class PlaysBatchTest {
    private static final int COUNT = 40;
    private static final int ROOM = 8000;

    private final int[] planes = RandomPositions.of(COUNT, 6);

    private static int[] results(PlaysBatch batch, int group) {
        int[] results = new int[8 * batch.counts.getInt(4 * group)];
        batch.results.asIntBuffer().get(8 * batch.starts.getInt(4 * group), results);
        return results;
    }

    @Test
    void whatFindsRoomIsWhole() {
        PlaysBatch all = new PlaysBatch(COUNT, PlainLane::memory);
        all.generate(planes);
        PlaysBatch tight = new PlaysBatch(COUNT, ROOM, PlainLane::memory);
        tight.generate(planes);
        int left = 0;
        for (int i = 0; i < COUNT; i++) {
            assertEquals(false, all.leftOut(i));
            left += tight.leftOut(i) ? 1 : 0;
            for (int roll = 0; roll < Roll.COUNT; roll++) {
                int group = i * Roll.COUNT + roll;
                if (tight.leftOut(i)) {
                    assertEquals(1, tight.counts.getInt(4 * group));
                    assertEquals(0, tight.starts.getInt(4 * group));
                } else {
                    assertArrayEquals(results(all, group), results(tight, group));
                }
            }
        }
        assertTrue(left > 0 && left < COUNT && tight.size() <= ROOM, left + " left out");
    }

    @Test
    void onePositionMustFit() {
        PlaysBatch none = new PlaysBatch(COUNT, 20, PlainLane::memory);
        assertThrows(IllegalStateException.class, () -> none.generate(planes));
    }

    /** In training a game without answers stands still for a turn. */
    @Test
    void gamesWithoutAnswersStandStill() {
        ResidualShape shape = ResidualShape.parse("128x1");
        PlainAccelerator machine = new PlainAccelerator(Recipe.ofGames(shape, shape, COUNT, 0.05), ROOM);
        machine.add(shape, Weights.of(shape));
        machine.add(shape, Weights.of(shape));
        LaneJudge judge = machine.lane();
        Lane lane = new Lane(COUNT, new GameRules(0, 1, 30, 0, 1, 0.1f, 100), 4);
        lane.value(machine);
        lane.throwDice(judge.plays());
        int[] before = lane.planes().clone();
        judge.plays().generate(before);
        judge.judge();
        lane.advance(judge.plays(), 0.5f, new LessonList());
        int still = 0;
        for (int i = 0; i < COUNT; i++) {
            int[] was = Arrays.copyOfRange(before, 8 * i, 8 * i + 8);
            int[] is = Arrays.copyOfRange(lane.planes(), 8 * i, 8 * i + 8);
            if (judge.plays().leftOut(i)) {
                still++;
                assertArrayEquals(was, is);
            } else {
                assertNotEquals(Arrays.toString(was), Arrays.toString(is));
            }
        }
        assertTrue(still > 0 && still < COUNT, still + " left out");
    }
}
