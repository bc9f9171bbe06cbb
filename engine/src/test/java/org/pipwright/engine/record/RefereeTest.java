package org.pipwright.engine.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

class RefereeTest {
    private static RecordBuilder begun(int length) {
        Rules rules = new Rules(length, false, false);
        RecordBuilder builder = new RecordBuilder(new Heading(List.of("Ada", "Ben"), rules, Map.of(), List.of()));
        builder.game();
        Roll roll = Roll.parse("3-1");
        builder.add(new Entry.Turn(0, roll, PlayText.parse("8/5 6/5", Position.start(), roll), ""));
        return builder;
    }

    private static final Entry DOUBLE = new Entry.Cube(1, CubeAction.DOUBLE, "");

    @Test
    void thereIsNothingToDoubleInAMatchToOnePoint() {
        RecordBuilder one = begun(1);
        assertEquals("Ben to roll", one.referee().expected());
        String refusal =
                assertThrows(IllegalEntryException.class, () -> one.add(DOUBLE)).getMessage();
        assertTrue(refusal.contains("no double is allowed here: the match is to 1 point"), refusal);
    }

    @Test
    void aLongerMatchHasACube() {
        RecordBuilder two = begun(2);
        assertEquals("Ben to roll or double", two.referee().expected());
        two.add(DOUBLE);
        assertEquals("Ada to take or pass", two.referee().expected());
    }
}
