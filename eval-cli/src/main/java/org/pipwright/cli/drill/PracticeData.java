package org.pipwright.cli.drill;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import org.pipwright.cli.report.DrillReport;
import org.pipwright.cli.report.DrillWords;
import org.pipwright.cli.report.GivenAway;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.PlayExercise;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.play.Step;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.roll.Roll;

/**
 * What the practice page's script knows: for each exercise its choices in the order of their worth, each with its text and
 * words about its cost; for plays also where they lead, so that they are recognised however they are written.
 */
final class PracticeData {
    private PracticeData() {}

    /** JSON that can stand inside a script element. */
    static String json(DrillReport report) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.writeStartArray();
            for (Exercise question : report.questions()) {
                json.writeStartObject();
                if (question instanceof PlayExercise) {
                    plays(json, (PlayExercise) question);
                } else {
                    actions(json, (CubeExercise) question);
                }
                json.writeEndObject();
            }
            json.writeEndArray();
        } catch (IOException e) {
            throw new UncheckedIOException("writing to a string does no I/O", e);
        }
        // Inside strings, where alone it can stand, this means the same; and it cannot end the element.
        return text.toString().replace("<", "\\u003c");
    }

    private static void plays(JsonGenerator json, PlayExercise question) throws IOException {
        Roll roll = question.roll();
        int[] dice = roll.isDouble()
                ? new int[] {roll.high(), roll.high(), roll.high(), roll.high()}
                : new int[] {roll.high(), roll.low()};
        json.writeFieldName("dice");
        json.writeArray(dice, 0, dice.length);
        json.writeFieldName("before");
        counts(json, question.position());
        json.writeArrayFieldStart("blots");
        for (int point = 1; point < Planes.BAR; point++) {
            if (question.position().opponentCount(Planes.BAR - point) == 1) {
                json.writeNumber(point);
            }
        }
        json.writeEndArray();
        json.writeArrayFieldStart("choices");
        for (PlayVerdict ranked : question.ranking()) {
            json.writeStartObject();
            json.writeStringField("text", ranked.play().toString());
            cost(json, GivenAway.by(question, ranked), ranked.grade().word());
            json.writeFieldName("after");
            counts(json, ranked.play().result());
            json.writeArrayFieldStart("hits");
            for (Step step : ranked.play().steps()) {
                if (step.hit()) {
                    json.writeNumber(step.to());
                }
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    /** The mover's checkers by place, borne off first. */
    private static void counts(JsonGenerator json, Position position) throws IOException {
        int[] counts = new int[Planes.PLACES];
        for (int place = 0; place < counts.length; place++) {
            counts[place] = position.count(place);
        }
        json.writeArray(counts, 0, counts.length);
    }

    private static void actions(JsonGenerator json, CubeExercise question) throws IOException {
        json.writeArrayFieldStart("choices");
        for (CubeAction action : List.of(question.best(), question.worse())) {
            json.writeStartObject();
            json.writeStringField("text", DrillWords.choice(question, action));
            cost(
                    json,
                    GivenAway.by(question, action),
                    Grade.ofCost(question.cost(action)).word());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void cost(JsonGenerator json, String given, String grade) throws IOException {
        json.writeStringField("given", given);
        json.writeStringField("grade", grade);
    }
}
