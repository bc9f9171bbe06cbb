package org.pipwright.engine.play;

import java.util.Arrays;
import java.util.List;
import org.pipwright.engine.fuzz.Seeds;
import org.pipwright.engine.fuzz.Target;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

/** Plays as people write them: a byte for the position, one for the roll, then the text. */
final class PlayTarget implements Target {
    private static final List<Position> POSITIONS = List.of(
            Position.start(),
            PositionText.parse("2@bar 3@6 5@8 5@13 / 2@bar 2@6 2@5 2@4 2@3 5@20"),
            PositionText.parse("1@1 2@2 3@6 9@off / 2@1 13@off"),
            PositionText.parse("1@6 1@5 13@off / 5@24 5@23 5@22"),
            PositionText.parse("3@bar 12@1 / 3@6 3@5 3@4 3@3 2@2 1@1"));

    private static final List<Roll> ROLLS = Roll.all();

    private static byte[] seed(int position, String roll, String play) {
        byte[] text = Seeds.of(play).get(0);
        byte[] data = new byte[text.length + 2];
        data[0] = (byte) position;
        data[1] = (byte) ROLLS.indexOf(Roll.parse(roll));
        System.arraycopy(text, 0, data, 2, text.length);
        return data;
    }

    @Override
    public List<byte[]> seeds() {
        return List.of(
                seed(0, "3-1", "8/5 6/5"),
                seed(0, "6-6", "24/18(2) 13/7(2)"),
                seed(0, "6-5", "24/18/13"),
                seed(2, "6-6", "6/off(3), 2/off"),
                seed(4, "6-5", "cannot move"));
    }

    @Override
    public boolean read(byte[] data) {
        if (data.length < 2) {
            return false;
        }
        Position position = POSITIONS.get(Math.floorMod(data[0], POSITIONS.size()));
        Roll roll = ROLLS.get(Math.floorMod(data[1], ROLLS.size()));
        Play play;
        try {
            play = PlayText.parse(Seeds.text(Arrays.copyOfRange(data, 2, data.length)), position, roll);
        } catch (IllegalPlayException e) {
            return false;
        }
        if (Plays.legal(position, roll).stream()
                .noneMatch(legal -> legal.result().equals(play.result()))) {
            throw new IllegalStateException("takes the illegal play " + play);
        }
        Seeds.requireSame(
                play.result(),
                PlayText.parse(PlayText.print(play), position, roll).result());
        return true;
    }
}
