package org.pipwright.bench.strength;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.util.Locale;

/** A score for people and for programs. */
final class ScoreReport {
    private ScoreReport() {}

    static String text(String who, Scorer scorer) {
        StringBuilder text = new StringBuilder(who).append('\n');
        text.append(String.format(
                "%-18s %9s %20s %17s %12s%n", "", "decisions", "loss a decision", "best play", "ms each"));
        scorer.byRegime().forEach((regime, score) -> text.append(line(regime.words(), score)));
        return text.append(line("all", scorer.all())).toString();
    }

    private static String line(String name, Score score) {
        return String.format(
                Locale.ROOT,
                "%-18s %9d %10.5f ± %7.5f %8.1f%% ± %4.1f%% %12.3f%n",
                name,
                score.decisions(),
                score.meanLoss(),
                score.lossError(),
                100 * score.bestShare(),
                100 * score.bestShareError(),
                1000 * score.secondsEach());
    }

    /** The costliest choices, one a line: what each loses, where, what was played and what is best. */
    static String worst(Scorer scorer, int most) {
        StringBuilder text = new StringBuilder();
        for (Scorer.Choice choice : scorer.worst(most)) {
            Reference reference = choice.reference();
            text.append(String.format(
                    Locale.ROOT,
                    "%.4f  %-16s  %s  %s: %s, best %s%n",
                    choice.loss(),
                    reference.regime().words(),
                    reference.position(),
                    reference.roll(),
                    choice.play(),
                    reference.plays().get(0).play()));
        }
        return text.toString();
    }

    static String json(String who, Scorer scorer) throws IOException {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.writeStartObject();
            json.writeStringField("player", who);
            write(json, "all", scorer.all());
            json.writeObjectFieldStart("regimes");
            for (var regime : scorer.byRegime().entrySet()) {
                write(json, regime.getKey().words(), regime.getValue());
            }
            json.writeEndObject();
            json.writeEndObject();
        }
        return text + System.lineSeparator();
    }

    private static void write(JsonGenerator json, String name, Score score) throws IOException {
        json.writeObjectFieldStart(name);
        json.writeNumberField("decisions", score.decisions());
        json.writeNumberField("meanLoss", score.meanLoss());
        json.writeNumberField("lossError", score.lossError());
        json.writeNumberField("bestShare", score.bestShare());
        json.writeNumberField("bestShareError", score.bestShareError());
        json.writeNumberField("secondsEach", score.secondsEach());
        json.writeEndObject();
    }
}
