package org.pipwright.engine.position;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Set;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.text.StrictJson;

/**
 * The JSON form of a position, with the same content as the text form: the checkers a side, then the side on roll
 * ({@code me}) and the {@code opponent}, each with its points counted from its own home, the bar and what is borne off:
 * {@code {"checkers":15,"me":{"points":{"6":5,"8":3,"13":5,"24":2},"bar":0,"off":0},"opponent":{...}}}.
 *
 * <p>Input may leave out {@code checkers} if it is 15, {@code bar} if it is 0, and {@code off}, which is what is missing.
 * The resource {@value #SCHEMA} is its JSON Schema (draft 2020-12).
 */
@PublicApi
public final class PositionJson {
    /** Name of the schema resource, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/engine/position.schema.json";

    /** Longest text accepted, in chars: several times the longest sensible one. */
    public static final int LIMIT = 10_000;

    private static final JsonFactory FACTORY = new JsonFactory();

    private PositionJson() {}

    /**
     * Reads a position.
     *
     * @param text the JSON form
     * @return the position
     * @throws InvalidPositionException if the text cannot be read or the position cannot be; one line says where and why
     */
    public static Position parse(String text) {
        return StrictJson.read(text, LIMIT, InvalidPositionException::new, PositionJson::position);
    }

    private static Position position(StrictJson json) {
        SideReader me = new SideReader("the side on roll");
        SideReader opponent = new SideReader("the opponent");
        int[] checkers = {Position.FULL};
        Set<String> keys = json.object("the position", "checkers, me and opponent", key -> {
            switch (key) {
                case "checkers":
                    checkers[0] = json.integer("checkers", 1, Position.FULL);
                    return true;
                case "me":
                    me.read(json);
                    return true;
                case "opponent":
                    opponent.read(json);
                    return true;
                default:
                    return false;
            }
        });
        for (String side : new String[] {"me", "opponent"}) {
            if (!keys.contains(side)) {
                throw new InvalidPositionException("the position has no '" + side + "': give both sides");
            }
        }
        return Position.of(me.counts(checkers[0]), opponent.counts(checkers[0]));
    }

    /**
     * The JSON form on one line, every key given, points from low to high.
     *
     * @param position a position
     * @return text that {@link #parse} reads back as an equal position
     */
    public static String print(Position position) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            write(json, position);
        } catch (IOException e) {
            throw new UncheckedIOException("writing to a string does no I/O", e);
        }
        return text.toString();
    }

    /**
     * Writes the JSON form as one value of a larger text.
     *
     * @param json where to write
     * @param position a position
     * @throws IOException if the generator cannot write
     */
    public static void write(JsonGenerator json, Position position) throws IOException {
        json.writeStartObject();
        json.writeNumberField("checkers", position.checkers());
        json.writeFieldName("me");
        writeSide(json, position);
        json.writeFieldName("opponent");
        writeSide(json, position.swapped());
        json.writeEndObject();
    }

    private static void writeSide(JsonGenerator json, Position position) throws IOException {
        json.writeStartObject();
        json.writeObjectFieldStart("points");
        for (int point = 1; point < Planes.BAR; point++) {
            if (position.count(point) > 0) {
                json.writeNumberField(Integer.toString(point), position.count(point));
            }
        }
        json.writeEndObject();
        json.writeNumberField("bar", position.count(Planes.BAR));
        json.writeNumberField("off", position.borneOff());
        json.writeEndObject();
    }
}
