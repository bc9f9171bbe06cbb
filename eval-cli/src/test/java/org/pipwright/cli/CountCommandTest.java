package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CountCommandTest {
    /** Shared by the tests, so that the tables are built once. */
    @TempDir
    static Path cache;

    private static Run count(String... args) {
        String[] all = new String[args.length + 3];
        all[0] = "count";
        System.arraycopy(args, 0, all, 1, args.length);
        all[args.length + 1] = "--cache";
        all[args.length + 2] = cache.toString();
        return Run.of(all);
    }

    private static void assertShows(String resource, String position) throws IOException {
        Run run = count(position);
        assertEquals(0, run.code(), run.err());
        try (var in = CountCommandTest.class.getResourceAsStream(resource)) {
            assertEquals(new String(in.readAllBytes(), StandardCharsets.UTF_8), run.out());
        }
    }

    /** Kept in full, so that a change is seen and read. */
    @Test
    void contactLooksSo() throws IOException {
        assertShows("count-contact.txt", "2@24 1@18 5@13 3@8 4@6 / 2@24 5@13 2@8 1@10 5@6");
    }

    @Test
    void anExactRaceLooksSo() throws IOException {
        assertShows("count-exact.txt", "2@2 1@5 2@6 / 1@1 3@4");
    }

    @Test
    void aRaceFromDistributionsLooksSo() throws IOException {
        assertShows("count-race.txt", "5@6 4@5 3@4 3@3 / 5@6 5@5 5@4");
    }

    /** Large tables are not built again by the way, which might take hours. */
    @Test
    void aDamagedLargeTableIsToldAndLeftOut() throws IOException {
        Path file = cache.resolve("twosided-6x10-v1.table");
        Files.writeString(file, "not a table at all, only some 70 characters, which is longer than a header.");
        try {
            Run run = count("8@1 / 8@1");
            assertEquals(0, run.code());
            assertEquals(
                    "pipwright: the table '" + file + "' is damaged (it does not begin like a table) and left out:"
                            + " remove it, or build it again with pipwright tables\n",
                    run.err().replaceAll("building [^\n]*\n", ""));
            assertTrue(run.out().contains("from distributions"), run.out());
            assertEquals("", count("start").err(), "with contact no table is looked at");
        } finally {
            Files.delete(file);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "start",
                "1@6 / 1@6",
                "15@6 / 5@5 5@4",
                "5@6 5@8 5@9 / 4@6 4@5 7@7",
                "1@bar 14@6 / 15@6",
                "2@1 / 15@23"
            })
    void jsonKeepsToItsSchema(String position) {
        Run run = count(position, "--json");
        assertEquals(0, run.code(), run.err());
        assertEquals(List.of(), Schemas.faults("count", run.out()));
    }

    @Test
    void jsonHasTheExactValues() throws IOException {
        JsonNode json = new ObjectMapper().readTree(count("1@6 / 1@6", "--json").out());
        assertEquals("exact", json.at("/race/basis").asText());
        assertEquals(0.8125, json.at("/race/win").asDouble(), 1e-6);
        assertEquals(1, json.at("/race/cube/centred").asDouble(), 1e-6);
        assertEquals(0.5, json.at("/race/cube/theirs").asDouble(), 1e-6);
        assertEquals(1.25, json.at("/onRoll/meanRolls").asDouble(), 1e-6);
        assertEquals(0.75, json.at("/opponent/rolls/1").asDouble(), 1e-6);
        JsonNode contact =
                new ObjectMapper().readTree(count("2@24 / 1@8 of 2", "--json").out());
        assertTrue(contact.at("/race").isMissingNode());
        assertEquals(6, contact.at("/onRoll/hitsOf36").asInt());
        assertEquals("5-2", contact.at("/onRoll/hits/1").asText());
    }

    @Test
    void finishedGamesAreRefused() {
        assertEquals(
                new Run(2, "", "pipwright: the game is over in this position: there is nothing left to count\n"),
                count("off / 1@6"));
    }
}
