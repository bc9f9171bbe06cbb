package org.pipwright.engine.position;

import java.util.List;
import org.pipwright.engine.fuzz.Seeds;
import org.pipwright.engine.fuzz.Target;

/** The JSON form of positions. */
final class PositionJsonTarget implements Target {
    @Override
    public List<byte[]> seeds() {
        return List.of(
                Seeds.of(PositionJson.print(Position.start())).get(0),
                Seeds.of(PositionJson.print(PositionText.parse("1@bar 2@off / 3@1 of 3")))
                        .get(0));
    }

    @Override
    public boolean read(byte[] data) {
        Position position;
        try {
            position = PositionJson.parse(Seeds.text(data));
        } catch (InvalidPositionException e) {
            return false;
        }
        Seeds.requireSame(position, PositionJson.parse(PositionJson.print(position)));
        return true;
    }
}
