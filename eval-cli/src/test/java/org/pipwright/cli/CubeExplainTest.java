package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.roll.Roll;

class CubeExplainTest {
    private static JsonNode json(String line) throws IOException {
        Run run = Run.of((line + " --explain --json --no-simulation --net " + TestNet.path()).split(" "));
        assertEquals(0, run.code(), run.err());
        assertEquals(List.of(), Schemas.faults("cube", run.out()));
        return new ObjectMapper().readTree(run.out());
    }

    private static List<String> sentences(String line) throws IOException {
        List<String> sentences = new ArrayList<>();
        json(line).get("sentences").forEach(sentence -> sentences.add(sentence.asText()));
        return sentences;
    }

    /** Last rolls: 19 and 17 of 36 bear off both checkers; with a dead cube a take needs 25 %. */
    @Test
    void aLastRollIsWonNowOrNever() throws IOException {
        List<String> right = sentences("cube 1@5 1@2 / 1@1");
        assertEquals(
                "It is the last roll, won now or never: the side on roll wins with 52.8 % of the rolls, and the opponent"
                        + " takes with 47.2 %.",
                right.get(0));
        assertEquals("On a last roll the opponent needs 25.0 % to take and has 47.2 %.", right.get(1));
        assertEquals(
                "It is the last roll, won now or never, and the side on roll wins with only 47.2 % of the rolls.",
                sentences("cube 1@4 1@3 / 1@1").get(0));
    }

    /** The famous pair: with the cube in hand and a roll to come for the opponent, the cube is worth keeping. */
    @Test
    void whatIsExactIsToldByItsValues() throws IOException {
        List<String> said = sentences("cube 1@5 1@2 / 1@6 --cube 2 --owner me");
        assertEquals(
                "Without a redouble the game is worth +0.292, with one +0.111: the cube is worth keeping.",
                said.get(0));
        assertTrue(said.get(1).contains("% of the next two rolls lose the market: 2-2, 3-3, 4-4, 5-2"), said.get(1));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "start --away 3,1 --crawford | Nothing to decide: there is no doubling in the Crawford game.",
                "start --cube 2 --owner them | Nothing to decide: only the opponent may double.",
                "4@6 4@5 4@4 / 4@6 4@5 4@4 --away 3,1 | The side on roll loses the match with this game anyway, so a double risks nothing.",
                "start --away 3,1 | Taken, the cube is dead: the opponent wins the match with this game and will not turn"
                        + " it again.",
                "start --away 4,2 --cube 2 --owner me | Taken, it is the last cube: the game decides the match.",
                "start --away 2,4 | Taken, the opponent loses the match with this game anyway, so it costs nothing to turn"
                        + " the cube again at once.",
                "start --away 2,2 | To the side on roll a gammon has a value of 0.85 with the cube at 1 and 0.00 with it at"
                        + " 2, to the opponent 0.85 and 0.00 (0.50 for money).",
                "start | By the Jacoby rule gammons count only once the cube has been turned.",
            })
    void whoHasAUseForTheCubeIsSaid(String line, String sentence) throws IOException {
        List<String> said = sentences("cube " + line);
        // At 2-away a single game leads to the Crawford game, won with 68.55 % by the table: a gammon adds 31.45 to
        // 37.10.
        assertTrue(
                said.stream().anyMatch(each -> each.equals(sentence)),
                sentence + " is not in " + String.join("\n", said));
    }

    /** Keith's count by hand: 58 pips, 58 / 7 more; 65. Kleinman: D = 11, S = 119, K = 1.017, so 76.2 %. */
    @Test
    void racesHaveTheirRulesOfThumb() throws IOException {
        List<String> said = sentences("cube 1@8 2@6 4@5 3@4 2@3 / 1@9 4@6 4@5 3@4");
        String all = String.join("\n", said);
        assertTrue(all.contains("The race is 58 to 65: the side on roll leads by 7 pips, 12.1 % of 58."), all);
        assertTrue(all.contains("The Keith count is 66 to 65: double, pass for money."), all);
        assertTrue(all.contains("Kleinman's formula gives 76.2 % from the pips alone, the net "), all);
    }

    @Test
    void rollsThatLoseTheMarketAddUp() throws IOException {
        JsonNode json = json("cube 5@6 3@8 3@7 2@24 2@3 / 4@6 3@8 5@13 2@24 1@bar");
        int throwsOfBoth = 0;
        for (JsonNode each : json.get("marketLosingRolls")) {
            throwsOfBoth += Roll.parse(each.get("roll").asText()).ways()
                    * each.get("replies").asInt();
        }
        assertEquals(json.get("marketLosers").asDouble(), throwsOfBoth / 1296.0, 1e-6);
        assertTrue(json.get("volatility").asDouble() > 0);
    }

    @Test
    void textSaysTheSameAndOnlyIfAsked() throws IOException {
        String line = "cube 1@5 1@2 / 1@1 --net " + TestNet.path();
        String text = Run.of((line + " --explain").split(" ")).out();
        for (String sentence : sentences("cube 1@5 1@2 / 1@1")) {
            assertTrue(text.contains("\n  " + sentence + "\n"), text);
        }
        assertFalse(Run.of(line.split(" ")).out().contains("Why"));
    }
}
