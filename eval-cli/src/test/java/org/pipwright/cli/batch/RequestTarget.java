package org.pipwright.cli.batch;

import java.util.List;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.fuzz.Seeds;
import org.pipwright.engine.fuzz.Target;
import org.pipwright.engine.position.InvalidPositionException;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionJson;
import org.pipwright.engine.position.PositionText;

/** Lines of batches and of files of positions: texts and JSON, with rolls and without. */
final class RequestTarget implements Target {
    @Override
    public List<byte[]> seeds() {
        return Seeds.of(
                "start 3-1",
                "5@6 3@8 5@13 2@24 / 5@6 3@8 5@13 2@24 66",
                "start of 15",
                "{\"position\":\"start\",\"roll\":\"3-1\"}",
                "{\"position\":" + PositionJson.print(Position.start()) + ",\"roll\":\"21\"}",
                PositionJson.print(Position.start()));
    }

    @Override
    public boolean read(byte[] data) {
        String line = Seeds.text(data).strip();
        if (line.isEmpty()) {
            return false;
        }
        Request bare = parsed(line, false);
        Request request = parsed(line, true);
        if (bare != null && request != null) {
            Seeds.requireSame(bare.position(), request.position());
        }
        if (request == null) {
            return false;
        }
        String again = PositionText.print(request.position()) + (request.roll() == null ? "" : " " + request.roll());
        Seeds.requireSame(request, Request.parse(again, true));
        return true;
    }

    private static Request parsed(String line, boolean rolls) {
        try {
            return Request.parse(line, rolls);
        } catch (UserError | InvalidPositionException e) {
            return null;
        }
    }
}
