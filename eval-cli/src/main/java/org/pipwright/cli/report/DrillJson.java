package org.pipwright.cli.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.PlayExercise;
import org.pipwright.engine.judge.PlayVerdict;

/** Exercises as JSON. The resource {@value #SCHEMA} is its JSON Schema (draft 2020-12). */
public final class DrillJson {
    /** Name of the schema resource, from the root of the class path. */
    public static final String SCHEMA = "/org/pipwright/cli/drill.schema.json";

    private DrillJson() {}

    /**
     * Prints exercises.
     *
     * @param report the exercises
     * @param out where to
     */
    public static void write(DrillReport report, PrintWriter out) {
        Json.print(out, "pipwright-drill", 3, json -> {
            json.writeStringField("title", report.title());
            report.source().write(json);
            report.net().write(json);
            json.writeArrayFieldStart("questions");
            for (int i = 0; i < report.questions().size(); i++) {
                question(
                        json, i + 1, report.questions().get(i), report.reasons().get(i));
            }
            json.writeEndArray();
        });
    }

    private static void question(JsonGenerator json, int number, Exercise question, Reasons reasons)
            throws IOException {
        json.writeStartObject();
        json.writeNumberField("number", number);
        DrillOrigin.write(json, question.origin());
        json.writeStringField("asked", asked(question));
        Json.position(json, question.position());
        json.writeStringField("best", answer(question, true));
        json.writeStringField("weaker", answer(question, false));
        json.writeNumberField("cost", Numbers.rounded(question.cost()));
        json.writeNumberField("margin", Numbers.rounded(question.margin()));
        sentences(json, "answer", AnswerLines.of(question, reasons).all());
        sentences(json, "bestSentences", reasons.best());
        sentences(json, "weakerSentences", reasons.weak());
        if (question instanceof PlayExercise) {
            plays(json, (PlayExercise) question);
        } else {
            cube(json, (CubeExercise) question);
        }
        json.writeEndObject();
    }

    private static void sentences(JsonGenerator json, String name, List<String> sentences) throws IOException {
        json.writeArrayFieldStart(name);
        for (String sentence : sentences) {
            json.writeString(sentence);
        }
        json.writeEndArray();
    }

    private static String asked(Exercise question) {
        if (question instanceof PlayExercise) {
            return "play";
        }
        return ((CubeExercise) question).answering() ? "take" : "double";
    }

    private static String answer(Exercise question, boolean best) {
        if (question instanceof PlayExercise) {
            PlayExercise plays = (PlayExercise) question;
            return (best ? plays.best() : plays.weak()).play().toString();
        }
        CubeExercise cube = (CubeExercise) question;
        return CubeWords.action(best ? cube.best() : cube.weak());
    }

    private static void plays(JsonGenerator json, PlayExercise question) throws IOException {
        json.writeStringField("roll", question.roll().toString());
        boolean cubeful = question.asked().cubeful();
        if (cubeful) {
            CubeJson.cube(json, question.cube());
            CubeJson.stakes(json, question.stakes());
        }
        json.writeArrayFieldStart("plays");
        for (PlayVerdict ranked : question.ranking()) {
            json.writeStartObject();
            Json.play(json, ranked.play());
            json.writeNumberField("equity", Numbers.rounded(ranked.equity()));
            if (cubeful) {
                json.writeNumberField("value", Numbers.rounded(ranked.value()));
            }
            json.writeNumberField("cost", Numbers.rounded(ranked.points()));
            json.writeStringField("grade", ranked.grade().word());
            json.writeStringField("basis", ranked.basis().title());
            Json.depth(json, ranked.depth());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void cube(JsonGenerator json, CubeExercise question) throws IOException {
        CubeJson.cube(json, question.cube());
        CubeJson.stakes(json, question.stakes());
        CubeJson.values(json, question.values());
        json.writeNumberField("unit", Numbers.rounded(question.unit()));
        json.writeObjectFieldStart("choices");
        for (CubeAction action : question.choices()) {
            json.writeNumberField(CubeWords.action(action), Numbers.rounded(question.cost(action)));
        }
        json.writeEndObject();
    }
}
