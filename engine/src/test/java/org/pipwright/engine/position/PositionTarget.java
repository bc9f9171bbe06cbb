package org.pipwright.engine.position;

import java.util.List;
import org.pipwright.engine.fuzz.Seeds;
import org.pipwright.engine.fuzz.Target;

/** The text form of positions: both of its readers, which must agree. */
final class PositionTarget implements Target {
    @Override
    public List<byte[]> seeds() {
        return Seeds.of(
                "start",
                "start of 3",
                "5@6 3@8 5@13 2@24 / 5@6 3@8 5@13 2@24",
                "1@bar 14@off / 2@bar 13@1",
                "1@3, 1@off / 2@5 of 2");
    }

    @Override
    public boolean read(byte[] data) {
        String text = Seeds.text(data);
        Position position;
        try {
            position = PositionText.parse(text);
        } catch (InvalidPositionException e) {
            return false;
        }
        Seeds.requireSame(position, PositionText.parseAny(text));
        Seeds.requireSame(position, PositionText.parse(PositionText.print(position)));
        Seeds.requireSame(position, PositionJson.parse(PositionJson.print(position)));
        return true;
    }
}
