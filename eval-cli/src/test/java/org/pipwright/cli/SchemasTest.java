package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The schemas are schemas, and refuse what is not as they say. */
class SchemasTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "rank",
                "odds",
                "cube",
                "rollout",
                "count",
                "duel",
                "standings",
                "drill",
                "review",
                "error",
                "rolls"
            })
    void eachIsASchema(String name) {
        assertEquals(java.util.List.of(), Schemas.faultsOfSchema(name));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"version\" : 2 | \"version\" : 1",
                "\"roll\" : \"3-1\" | \"roll\" : \"3-7\"",
                "\"opponent\" : | \"other\" :",
                "\"grade\" : \"fine\" | \"grade\" : \"poor\"",
                "\"winGammon\" : | \"winGammons\" :",
                "\"winGammon\" : 0 | \"winGammon\" : 1",
                "\"cost\" : 0 | \"cost\" : 1",
                "\"steps\" : | \"moves\" :",
                "\"legalPlays\" : 16 | \"legalPlays\" : 0",
            })
    void eachRefusesWhatIsWrong(String right, String wrong) {
        String json = Run.of("rank", "start", "--roll", "3-1", "--json", "--net", TestNet.path())
                .out();
        assertEquals(java.util.List.of(), Schemas.faults("rank", json));
        String changed = json.replaceFirst(java.util.regex.Pattern.quote(right), wrong);
        assertFalse(changed.equals(json), "nothing to change");
        assertFalse(Schemas.faults("rank", changed).isEmpty(), changed);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"\"win\" : 0 | \"win\" : 5", "\"loseGammon\" : 0 | \"loseGammon\" : -1", "\"me\" : | \"you\" :"})
    void oddsRefuseWhatIsWrong(String right, String wrong) {
        String json = Run.of("odds", "start", "--json", "--net", TestNet.path()).out();
        assertEquals(java.util.List.of(), Schemas.faults("odds", json));
        String changed = json.replaceFirst(java.util.regex.Pattern.quote(right), wrong);
        assertFalse(changed.equals(json), "nothing to change");
        assertFalse(Schemas.faults("odds", changed).isEmpty(), changed);
    }
}
