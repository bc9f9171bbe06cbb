package org.pipwright.engine.play;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.play.WrittenPlay.Hop;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.text.StrictJson;

/**
 * The JSON form of a play: its steps, places counted from the mover's home with 25 for the bar and 0 for off, as in
 * {@code {"steps":[{"from":13,"to":7,"hit":true}]}}. Input may join the steps of one checker and leave {@code hit} out,
 * as in text; no steps is the play that moves nothing. The resource {@value #SCHEMA} is its JSON Schema (draft 2020-12).
 */
@PublicApi
public final class PlayJson {
    /** Name of the schema resource, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/engine/play.schema.json";

    /** Longest text accepted, in chars: several times the longest sensible one. */
    public static final int LIMIT = 2_000;

    private static final JsonFactory FACTORY = new JsonFactory();

    private static final int MAX_STEPS = 4;

    private PlayJson() {}

    /**
     * Reads a play.
     *
     * @param text the JSON form
     * @param position the position before the play
     * @param roll the roll
     * @return the legal play that the text describes
     * @throws IllegalPlayException if the text cannot be read or the play is not legal; one line says why
     */
    public static Play parse(String text, Position position, Roll roll) {
        WrittenPlay written = StrictJson.read(text, LIMIT, IllegalPlayException::new, PlayJson::written);
        return PlayResolver.resolve(written, position, roll);
    }

    private static WrittenPlay written(StrictJson json) {
        List<Hop> hops = new ArrayList<>();
        int[] stars = {0};
        Set<String> keys = json.object("the play", "steps", key -> {
            if (!key.equals("steps")) {
                return false;
            }
            json.array("steps", MAX_STEPS, () -> step(json, hops, stars));
            return true;
        });
        if (keys.isEmpty()) {
            throw new IllegalPlayException("the play has no 'steps': give [] if no checker moves");
        }
        return new WrittenPlay(List.copyOf(hops), stars[0]);
    }

    private static void step(StrictJson json, List<Hop> hops, int[] stars) {
        int[] places = new int[2];
        boolean[] hit = {false};
        Set<String> keys = json.object("a step", "from, to and hit", key -> {
            switch (key) {
                case "from":
                    places[0] = json.integer("from", 1, Planes.BAR);
                    return true;
                case "to":
                    places[1] = json.integer("to", Planes.OFF, Planes.BAR - 1);
                    return true;
                case "hit":
                    hit[0] = json.bool("hit");
                    return true;
                default:
                    return false;
            }
        });
        if (!keys.contains("from") || !keys.contains("to")) {
            throw new IllegalPlayException("a step needs 'from' and 'to'");
        }
        hops.add(new Hop(places[0], places[1]));
        stars[0] |= hit[0] ? 1 << places[1] : 0;
    }

    /**
     * The JSON form on one line, every key given.
     *
     * @param play a play
     * @return text that {@link #parse} reads back as an equal play of the same position and roll
     */
    public static String print(Play play) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            write(json, play);
        } catch (IOException e) {
            throw new UncheckedIOException("writing to a string does no I/O", e);
        }
        return text.toString();
    }

    /**
     * Writes the JSON form as one value of a larger text.
     *
     * @param json where to write
     * @param play a play
     * @throws IOException if the generator cannot write
     */
    public static void write(JsonGenerator json, Play play) throws IOException {
        json.writeStartObject();
        json.writeArrayFieldStart("steps");
        for (Step step : play.steps()) {
            json.writeStartObject();
            json.writeNumberField("from", step.from());
            json.writeNumberField("to", step.to());
            json.writeBooleanField("hit", step.hit());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }
}
