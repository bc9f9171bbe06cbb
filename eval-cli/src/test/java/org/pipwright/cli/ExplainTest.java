package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.RankReport;
import org.pipwright.cli.report.RankText;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.RollReply;

class ExplainTest {
    private static String explained(String... args) {
        List<String> all = new ArrayList<>(List.of("rank", "--explain"));
        all.addAll(List.of(args));
        Run run = Run.of(all.toArray(String[]::new));
        assertEquals(0, run.code());
        return run.out();
    }

    /** What is said of one play if no other is considered, whatever the net thinks of it. */
    private static String explainedAlone(String from, String dice, String text) {
        Position position = PositionText.parse(from);
        Roll roll = Roll.parse(dice);
        StringWriter out = new StringWriter();
        try (Judge judge = Judge.open(TestNet.MODEL)) {
            Question question = Question.of(position, roll).only(List.of(PlayText.parse(text, position, roll)));
            Verdict verdict = judge.ask(question, Effort.STATIC);
            RankReport report = RankReport.of(verdict, List.of(), NetLabel.of("tiny", TestNet.MODEL), 1);
            RankText.write(
                    report.with(Explanation.of(position, verdict.plays(), judge, 0)), new PrintWriter(out, true));
        }
        return out.toString();
    }

    /** What is said of the board, checked by hand; '+' joins sentences of one paragraph. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "start | 3-1 | 8/5 6/5 | It makes the 5 point. + It leaves no blot. + It keeps the anchor on the 24 point."
                        + " + After it the race is 163 to 167: a lead of 4 pips.",
                "start | 4-3 | 24/20 13/10 | It gives up the 24 point (an anchor).",
                "start | 6-5 | 24/13 | It gives up the 24 point (an anchor). + It leaves a blot on the 24 point; 22 of 36 rolls hit it, which loses 1 pip.",
                "2@6 2@5 2@4 2@13 7@8 / 15@24 | 6-1 | 13/7 8/7 | It makes the 7 point and gives up the 13 point. + It leaves a blot on the 13"
                        + " point, which no roll hits at once."
                        + " + It holds a prime of 5 points, from 4 to 8, with 15 checkers behind it; before, the longest such"
                        + " row had 3.",
                // One checker on the 9 point and the third on the 6 point are free, down to the 3 point; of the
                // opponent's two
                // and one: 6 + 3 pips against 2 * 6 + 3.
                "2@24 2@9 2@8 2@7 3@6 2@5 2@4 / 2@24 2@9 2@8 2@7 3@6 2@5 2@4 | 6-5 | 9/3 8/3 | The opponent has a prime of 6"
                        + " points with 2 checkers of this side behind it. + Before a point from 4 to 8 breaks it has 9 pips to"
                        + " play, the opponent 15.",
                "10@6 2@24 1@14 2@13 / 1@20 14@6 | 2-1 | 6/4 6/5* | It hits a checker, which costs the opponent 5 pips. + It leaves"
                        + " blots on the 14, 5 and 4 points; 0, 15 and 15 of 36 rolls hit them, which loses 11, 20 and 21 pips.",
                "2@3 1@2 / 2@2 of 3 | 6-5 | 3/off(2) | It bears off 2 checkers. + After it the race is 2 to 4: a lead of 2"
                        + " pips. + % of the games; gammons no longer happen.",
                "2@24 6@13 7@8 / 2@7 2@6 2@5 2@4 7@3 | 2-1 | 13/10 | It leaves a blot on the 10 point, which no roll"
                        + " hits at once. + The opponent has a prime of 5 points with 2 checkers of this side behind it.",
            })
    void sentencesAboutTheBoard(String position, String roll, String play, String expected) {
        String text = explainedAlone(position, roll, play);
        assertTrue(text.contains("\nBest: " + play + "\n"), text);
        int at = text.indexOf("\nBest: ");
        for (String sentence : expected.split(" \\+ ")) {
            int next = text.indexOf(sentence.strip(), at);
            assertTrue(next >= at, sentence + " is not in\n" + text);
            at = next;
        }
    }

    @Test
    void rivalsAreToldByWhatDiffers() {
        String text = explained("start", "--roll", "3-1", "--plays", "8/5 6/5; 24/23 13/10; 13/9");
        assertTrue(text.contains("\nBest: 8/5 6/5\n  It makes the 5 point.\n"), text);
        assertTrue(text.contains("\n13/9 gives away 0."), text);
        int at = text.indexOf("\n24/23 13/10 gives away 0.");
        int end = text.indexOf("\n\n", at);
        String rival = text.substring(at, end < 0 ? text.length() : end);
        assertTrue(rival.contains(" (heavy)\n  Mainly because it does not make the 5 point"), rival);
        assertTrue(
                rival.matches(
                        "(?s).*  Of 100 games it wins \\d\\.\\d fewer \\(-0\\.\\d{3} points\\), wins \\d\\.\\d fewer"
                                + " gammons \\(-0\\.\\d{3}\\) and loses \\d\\.\\d more gammons \\(-0\\.\\d{3}\\)\\..*"),
                rival);
        assertFalse(rival.contains("race"), rival);
    }

    /** Whatever speaks for a weaker play, what speaks against it comes first. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "start | 6-2",
                "start | 6-4",
                "start | 5-1",
                "2@6 2@5 3@8 4@13 2@24 1@18 1@9 / 5@6 3@8 4@13 1@10 2@24 | 6-1",
                "3@6 3@5 2@4 2@8 2@10 1@20 2@22 / 4@6 3@8 3@4 2@2 3@13 | 4-1",
                "10@6 2@24 1@14 2@13 / 1@20 14@6 | 2-1",
                "2@3 5@2 4@5 / 4@2 3@6 5@1 | 4-3",
            })
    void aWeakerPlayIsToldWhatItLacks(String position, String roll) {
        String text = explained(position, "--roll", roll, "--lookahead", "1");
        String[] rivals = text.substring(text.indexOf("\nBest: ")).split("\n\n");
        assertTrue(rivals.length > 1, text);
        for (int i = 1; i < rivals.length; i++) {
            String[] lines = rivals[i].split("\n");
            assertTrue(lines[0].contains(" gives away "), rivals[i]);
            assertFalse(lines[1].startsWith("  For it: "), rivals[i]);
        }
    }

    /** A blot that has not moved is hit as often as others and loses little. */
    @Test
    void riskIsToldInPips() throws IOException {
        String text = explained("start", "--roll", "2-1", "--plays", "24/23 13/11", "--json", "--net", TestNet.path());
        JsonNode play = new ObjectMapper().readTree(text).at("/explanation/plays/1");
        assertEquals(1, play.at("/blots/2/pips").asInt());
        assertEquals(24, play.at("/blots/2/point").asInt());
        assertTrue(play.get("shots").asInt() > 30 && play.get("risk").asDouble() < 3, text);
    }

    /** Board facts as shown in the documents; the last digits of the net's numbers may differ with the processor. */
    @Test
    void theDocumentsShowWhatOneGets() throws IOException {
        String documents = Example.documentation();
        int at = documents.indexOf("Best: 24/18 13/11\n");
        String shown = documents.substring(at, documents.indexOf("```", at));
        String text = explained("start", "--roll", "6-2", "--top", "2");
        assertEquals(rounded(shown), rounded(text.substring(text.indexOf("Best: "))));
    }

    private static String rounded(String text) {
        return text.replaceAll("(\\d\\.)\\d+", "$1#");
    }

    @Test
    void jsonHasTheSameFactsAndKeepsToItsSchema() throws IOException {
        String text = explained("start", "--roll", "6-2", "--top", "3", "--json", "--net", TestNet.path());
        assertEquals(List.of(), Schemas.faults("rank", text));
        JsonNode json = new ObjectMapper().readTree(text);
        JsonNode explanation = json.get("explanation");
        assertEquals(3, explanation.get("plays").size());
        for (int i = 0; i < 3; i++) {
            JsonNode play = explanation.get("plays").get(i);
            assertEquals(json.get("plays").get(i).get("playText"), play.get("playText"));
            assertEquals(21, play.get("replies").size());
            assertTrue(play.get("sentences").size() > 0);
            swingsAreTheSearchs(play);
        }
    }

    private static void swingsAreTheSearchs(JsonNode play) {
        Position next = PlayText.parse(play.get("playText").asText(), Position.start(), Roll.of(6, 2))
                .next();
        try (Judge judge = new Judge(Knowledge.of(TestNet.MODEL), 1)) {
            List<RollReply> replies = judge.replies(next, 0);
            for (JsonNode told : play.get("replies")) {
                RollReply reply =
                        replies.get(Roll.parse(told.get("roll").asText()).index());
                assertEquals(reply.play().toString(), told.get("reply").asText());
                assertEquals(-reply.outcomes().equity(), told.get("equity").asDouble(), 2e-6);
            }
        }
    }

    @Test
    void schemaRefusesWhatIsWrong() {
        String text = explained("start", "--roll", "6-2", "--json", "--net", TestNet.path());
        for (String wrong : List.of("\"idleRolls\" : 37", "\"idleRolls\" : -1")) {
            assertFalse(Schemas.faults("rank", text.replaceFirst("\"idleRolls\" : \\d+", wrong))
                    .isEmpty());
        }
    }

    @Test
    void withoutTheOptionNothingIsExplained() {
        Run run = Run.of("rank", "start", "--roll", "3-1", "--json", "--net", TestNet.path());
        assertFalse(run.out().contains("explanation"));
    }
}
