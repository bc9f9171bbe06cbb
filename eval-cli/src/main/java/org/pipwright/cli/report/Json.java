package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayJson;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionJson;
import org.pipwright.engine.ranking.Depth;

/** What the JSON reports share. */
final class Json {
    /** With signs beyond ASCII escaped, so that the text is the same in all encodings. */
    private static final JsonFactory FACTORY =
            new JsonFactoryBuilder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();

    private Json() {}

    /** Writes the members of an object. */
    @FunctionalInterface
    interface Members {
        void write(JsonGenerator json) throws IOException;
    }

    /** Prints one object that begins with the name and version of its form. */
    static void print(PrintWriter out, String form, Members members) {
        print(out, form, 1, members);
    }

    /** The same for a form whose members have changed their meaning since version 1. */
    static void print(PrintWriter out, String form, int version, Members members) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            json.setPrettyPrinter(new DefaultPrettyPrinter());
            object(json, form, version, members);
        } catch (IOException e) {
            throw new UncheckedIOException("writing to a string does no I/O", e);
        }
        out.println(text);
    }

    private static void object(JsonGenerator json, String form, int version, Members members) throws IOException {
        json.writeStartObject();
        json.writeStringField("form", form);
        json.writeNumberField("version", version);
        members.write(json);
        json.writeEndObject();
    }

    /** Writes such an object as the answer to a line of a batch. */
    static void line(JsonGenerator json, String form, int version, long line, Members members) throws IOException {
        object(json, form, version, object -> {
            object.writeNumberField("line", line);
            members.write(object);
        });
    }

    /** A position in both its forms. */
    static void position(JsonGenerator json, Position position) throws IOException {
        json.writeFieldName("position");
        PositionJson.write(json, position);
        json.writeStringField("positionText", position.toString());
    }

    /** A play in both its forms. */
    static void play(JsonGenerator json, Play play) throws IOException {
        json.writeFieldName("play");
        PlayJson.write(json, play);
        json.writeStringField("playText", play.toString());
    }

    /** How deeply something was evaluated. */
    static void depth(JsonGenerator json, Depth depth) throws IOException {
        json.writeNumberField("lookahead", depth.lookahead());
        if (depth.games() > 0) {
            json.writeNumberField("games", depth.games());
            number(json, "standardError", depth.error());
        }
    }

    /**
     * A number of points or a chance, to a millionth. Written digit by digit: what the JDK does for any double took a fifth
     * of the time of a batch.
     */
    static void number(JsonGenerator json, String name, double value) throws IOException {
        json.writeFieldName(name);
        json.writeNumber(Numbers.millionths(value));
    }

    /** The six chances, each from 0 to 1. */
    static void chances(JsonGenerator json, Outcomes outcomes) throws IOException {
        json.writeObjectFieldStart("chances");
        number(json, "winSingle", outcomes.winSingle());
        number(json, "winGammon", outcomes.winGammon());
        number(json, "winBackgammon", outcomes.winBackgammon());
        number(json, "loseSingle", outcomes.loseSingle());
        number(json, "loseGammon", outcomes.loseGammon());
        number(json, "loseBackgammon", outcomes.loseBackgammon());
        json.writeEndObject();
    }
}
