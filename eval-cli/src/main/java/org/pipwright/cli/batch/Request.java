package org.pipwright.cli.batch;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionJson;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.text.Excerpt;

/**
 * What a line asks about: a position, and a roll if plays are ranked. A line is a position in its text form, with the roll
 * behind it; or the JSON form of a position; or a JSON object with members {@code position}, in either form, and
 * {@code roll}.
 *
 * @param position the position
 * @param roll the roll, or null if the line has none
 */
public record Request(Position position, Roll roll) {
    private static final JsonFactory FACTORY = JsonFactory.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();

    private static final String MEMBERS = "use \"position\" and \"roll\", or the JSON form of a position";

    /**
     * Reads a line.
     *
     * @param line the line, not blank
     * @param rolls whether a line may have a roll
     * @return what it asks
     * @throws UserError if it cannot be read; positions and rolls that cannot be are told by their own exceptions
     */
    static Request parse(String line, boolean rolls) {
        return line.startsWith("{") ? ofJson(line, rolls) : ofText(line, rolls);
    }

    private static Request ofText(String line, boolean rolls) {
        int cut = line.lastIndexOf(' ') + 1;
        String word = line.substring(cut);
        // In 'start of 15' the last word is the number of checkers.
        if (rolls
                && word.matches("\\d-?\\d")
                && !line.substring(0, cut).stripTrailing().endsWith(" of")) {
            return new Request(PositionText.parse(line.substring(0, cut)), roll(word));
        }
        return new Request(PositionText.parse(line), null);
    }

    private static Roll roll(String text) {
        try {
            return Roll.parse(text);
        } catch (IllegalArgumentException e) {
            throw new UserError(e.getMessage());
        }
    }

    private static Request ofJson(String line, boolean rolls) {
        try (JsonParser json = FACTORY.createParser(line)) {
            json.nextToken();
            String position = null;
            Roll roll = null;
            while (json.nextToken() == JsonToken.FIELD_NAME) {
                String name = json.currentName();
                JsonToken value = json.nextToken();
                if (name.equals("position")) {
                    position = position(json, value, line);
                } else if (name.equals("roll") && rolls && value == JsonToken.VALUE_STRING) {
                    roll = roll(json.getText());
                } else {
                    return new Request(PositionJson.parse(line), null);
                }
            }
            if (position == null) {
                throw new UserError("no \"position\" in this line: " + MEMBERS);
            }
            if (json.nextToken() != null) {
                throw new UserError("there is more after the object: write one object a line");
            }
            return new Request(
                    position.startsWith("{") ? PositionJson.parse(position) : PositionText.parse(position), roll);
        } catch (JsonProcessingException e) {
            throw new UserError("not JSON: " + Excerpt.of(e.getOriginalMessage()) + ": " + MEMBERS);
        } catch (IOException e) {
            throw new UncheckedIOException("reading from a string does no I/O", e);
        }
    }

    /** The value of the member, as the text of either form. */
    private static String position(JsonParser json, JsonToken value, String line) throws IOException {
        if (value == JsonToken.VALUE_STRING) {
            return json.getText().strip();
        }
        int from = (int) json.currentTokenLocation().getCharOffset();
        json.skipChildren();
        int to = (int) json.currentLocation().getCharOffset();
        return line.substring(from, to);
    }
}
