package org.pipwright.bench.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.roll.Roll;

/** Scores on a reference made up by hand, whose losses can be added up by hand. */
class ScorerTest {
    private static final String START = "5@6 3@8 5@13 2@24 / 5@6 3@8 5@13 2@24";

    private static final List<Reference> REFERENCES = List.of(
            reference(1, Regime.OPENING, "3-1", "8/5 6/5", "24/20", "6/2"),
            reference(2, Regime.OPENING, "6-1", "13/7 8/7", "13/6", "8/1"),
            reference(3, Regime.CONTACT, "6-5", "24/13", "13/2", "13/7 13/8"),
            reference(4, Regime.CONTACT, "4-2", "8/4 6/4", "13/7", "6/4 6/2"));

    /** The best play, the second, the bad and the best. */
    private static final Map<String, String> PLAYS =
            Map.of("3-1", "8/5 6/5", "6-1", "13/6", "6-5", "13/7 13/8", "4-2", "8/4 6/4");

    private static Reference reference(int id, Regime regime, String roll, String best, String second, String bad) {
        return new Reference(
                id,
                regime,
                START,
                roll,
                "a v b",
                144,
                List.of(new Reference.Rolled(best, 0.1, 0, 0), new Reference.Rolled(second, 0.07, -0.03, 0.004)),
                Map.of(bad, -0.2));
    }

    private static Scorer score(Map<String, String> plays) {
        return Scorer.of(REFERENCES, (position, roll) -> PlayText.parse(plays.get(roll.toString()), position, roll)
                .result());
    }

    @Test
    void lossesAreAddedUp() {
        Scorer scorer = score(PLAYS);

        assertEquals(4, scorer.all().decisions());
        assertEquals((0.03 + 0.2) / 4, scorer.all().meanLoss(), 1e-12);
        assertEquals(0.5, scorer.all().bestShare());
        assertEquals(0.25, scorer.all().bestShareError(), 1e-12);
        assertEquals(0.015, scorer.byRegime().get(Regime.OPENING).meanLoss(), 1e-12);
        assertEquals(0.1, scorer.byRegime().get(Regime.CONTACT).meanLoss(), 1e-12);
        assertEquals(2, scorer.byRegime().size());
        assertTrue(scorer.all().secondsEach() > 0);
    }

    @Test
    void theCostliestComeFirst() {
        Scorer scorer = score(PLAYS);

        assertEquals(
                "0.2000  contact           " + START + "  6-5: 13/7 13/8, best 24/13" + System.lineSeparator(),
                ScoreReport.worst(scorer, 1));
        assertEquals(
                List.of(3, 2),
                scorer.worst(4).stream().map(choice -> choice.reference().id()).collect(Collectors.toList()));
        assertEquals("", ScoreReport.worst(scorer, 0));
    }

    /** Sample standard deviation over the root of the number, by the textbook's formula. */
    @Test
    void standardErrorIsTheTextbooks() {
        double[] losses = {0, 0.03, 0.2, 0};
        double mean = 0.0575;
        double sum = 0;
        for (double loss : losses) {
            sum += (loss - mean) * (loss - mean);
        }

        assertEquals(Math.sqrt(sum / 3 / 4), score(PLAYS).all().lossError(), 1e-12);
    }

    @Test
    void aPlayThatCannotBeToldFromTheBestCountsAsBest() {
        Reference reference = new Reference(
                1,
                Regime.OPENING,
                START,
                "3-1",
                "a v b",
                144,
                List.of(
                        new Reference.Rolled("a", 0.1, 0, 0),
                        new Reference.Rolled("b", 0.095, -0.005, 0.003),
                        new Reference.Rolled("c", 0.08, -0.02, 0.006),
                        new Reference.Rolled("d", -0.1, -0.2, 0.009)),
                Map.of("e", -0.3));

        assertEquals(
                List.of(true, true, false, false, false),
                Stream.of("a", "b", "c", "d", "e").map(reference::isBest).toList());
    }

    /** Losses 0, 0.03, 0.2, 0 less 0.03, 0, 0.2, 0.03. */
    @Test
    void differencesAreTakenDecisionByDecision() {
        Scorer other = score(Map.of("3-1", "24/20", "6-1", "13/7 8/7", "6-5", "13/7 13/8", "4-2", "13/7"));

        Score more = score(PLAYS).beyond(other);

        double mean = -0.03 / 4;
        double squares = 2 * Math.pow(-0.03 - mean, 2) + Math.pow(0.03 - mean, 2) + mean * mean;
        assertEquals(mean, more.meanLoss(), 1e-12);
        assertEquals(Math.sqrt(squares / 3 / 4), more.lossError(), 1e-12);
    }

    @Test
    void warmingUpComesToEveryDecision() {
        Set<Roll> met = new HashSet<>();
        Scorer.warmUp(
                REFERENCES,
                (position, roll) -> {
                    met.add(roll);
                    return position;
                },
                Duration.ofMillis(50));

        assertEquals(REFERENCES.size(), met.size());
    }

    @Test
    void playsWithoutAValueAreAnError() {
        Map<String, String> unknown = Map.of("3-1", "13/10 24/23");

        assertThrows(IllegalArgumentException.class, () -> score(unknown));
    }

    @Test
    void reportsSayTheSame() throws IOException {
        Scorer scorer = score(PLAYS);

        JsonNode json = new ObjectMapper().readTree(ScoreReport.json("x", scorer));
        String text = ScoreReport.text("x", scorer);

        assertEquals(0.0575, json.get("all").get("meanLoss").asDouble(), 1e-12);
        assertEquals(0.015, json.get("regimes").get("opening").get("meanLoss").asDouble(), 1e-12);
        assertTrue(text.contains("all                        4    0.05750"), text);
        assertTrue(text.contains("50.0% ± 25.0%"), text);
    }
}
