package org.pipwright.bench.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.parallel.Post;
import org.pipwright.engine.play.Plays;
import org.pipwright.models.ModelCatalog;

/** References: made by rollout, kept line by line. */
class ReferenceTest {
    private static final List<Decision> DECISIONS = List.of(
            new Decision(1, Regime.RACE, "2@5 2@6 / 3@4 1@1", "4-3", "a v b"),
            new Decision(2, Regime.OPENING, "5@6 3@8 5@13 2@24 / 5@6 3@8 5@13 2@24", "2-1", "a v b"),
            new Decision(3, Regime.RACE, "2@5 2@6 / 2@4 1@1", "2-1", "b v a"));

    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void writeDecisions() throws IOException {
        file = folder.resolve("decisions");
        DecisionsHeader header =
                new DecisionsHeader(DecisionsHeader.KIND, 1, List.of("a", "b"), "a", "0", 0.12, 1, 9, null);
        JsonLines.write(file, header, DECISIONS);
    }

    private ReferenceHeader header(int trials) throws IOException {
        return new ReferenceHeader(
                ReferenceHeader.KIND, ReferenceCommand.sha256(file), "net", "0", 1, 0, 2, trials, 0.004, 0.12);
    }

    private static Reference made(Decision d) {
        return new Reference(
                d.id(),
                d.regime(),
                d.position(),
                d.roll(),
                d.game(),
                144,
                List.of(new Reference.Rolled("x", 0.5, 0, 0)),
                Map.of("y", -0.25));
    }

    @Test
    void rolloutsValueEveryPlay() throws IOException {
        Model model = ModelCatalog.shipped().load("fifth");
        try (Referee referee = new Referee(Knowledge.of(model), header(216), 2)) {
            for (Decision decision : DECISIONS) {
                Reference reference = referee.judge(decision);
                int plays = Plays.legal(decision.board(), decision.dice()).size();
                assertEquals(
                        plays, reference.plays().size() + reference.others().size());
                assertTrue(reference.plays().size() >= 2);
                assertEquals(0, reference.plays().get(0).behind());
                assertTrue(reference.trials() >= 144 && reference.trials() <= 216, reference::toString);
                boolean exact = reference.plays().stream()
                        .allMatch(play -> play.error() <= 0.004 || play.behind() + 4 * play.error() < -0.12);
                assertTrue(exact || reference.trials() == 216, reference::toString);
                assertTrue(reference.others().values().stream().allMatch(cost -> cost < -0.12));
            }
        }
    }

    @Test
    void aFileGoesOnWhereItWasCut() throws IOException {
        Path part = folder.resolve("part");
        try (ReferenceFile out = new ReferenceFile(part, header(720))) {
            out.add(made(DECISIONS.get(0)));
            out.add(made(DECISIONS.get(1)));
        }
        String whole = Files.readString(part);
        Files.writeString(part, whole.substring(0, whole.length() - 7));

        try (ReferenceFile out = new ReferenceFile(part, header(720))) {
            assertTrue(out.has(1));
            assertFalse(out.has(2));
            out.add(made(DECISIONS.get(1)));
        }

        assertEquals(whole, Files.readString(part));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 5})
    void aFileCutInItsFirstLineBeginsAnew(int length) throws IOException {
        Path part = folder.resolve("part");
        new ReferenceFile(part, header(720)).close();
        String whole = Files.readString(part);
        Files.writeString(part, whole.substring(0, length));

        new ReferenceFile(part, header(720)).close();

        assertEquals(whole, Files.readString(part));
    }

    @Test
    void aFileBegunWithOtherSettingsIsRefused() throws IOException {
        Path part = folder.resolve("part");
        new ReferenceFile(part, header(720)).close();

        assertThrows(IllegalArgumentException.class, () -> new ReferenceFile(part, header(1440)));
    }

    /** A larger error is allowed beyond 0.12 by more than four standard errors. */
    @Test
    void differencesAreKnownWellEnough() throws IOException {
        ReferenceHeader header = header(720);

        assertTrue(header.exactEnough(0, 0));
        assertTrue(header.exactEnough(-0.05, 0.004));
        assertFalse(header.exactEnough(-0.05, 0.0041));
        assertFalse(header.exactEnough(-0.1244, 0.005));
        assertTrue(header.exactEnough(-0.15, 0.006));
    }

    @Test
    void aReferenceIsExactEnoughIfAllItsPlaysAre() throws IOException {
        Decision decision = DECISIONS.get(1);
        Reference unsure = new Reference(
                decision.id(),
                decision.regime(),
                decision.position(),
                decision.roll(),
                decision.game(),
                720,
                List.of(new Reference.Rolled("x", 0.5, 0, 0), new Reference.Rolled("y", 0.49, -0.01, 0.005)),
                Map.of());

        assertTrue(header(720).exactEnough(made(decision)));
        assertFalse(header(720).exactEnough(unsure));
    }

    @Test
    void aWholeFileIsInTheOrderOfItsDecisions() throws IOException {
        Path out = folder.resolve("all");
        try (ReferenceFile all = new ReferenceFile(out, header(720))) {
            for (int i : new int[] {2, 0, 1}) {
                all.add(made(DECISIONS.get(i)));
            }
            assertEquals(3, all.sort());
        }

        assertEquals(
                DECISIONS.stream().map(ReferenceTest::made).collect(Collectors.toList()),
                JsonLines.read(out, ReferenceHeader.class, Reference.class).records());
        try (ReferenceFile again = new ReferenceFile(out, header(720))) {
            assertTrue(again.has(1) && again.has(2) && again.has(3));
        }
    }

    @Test
    void otherMachinesMakeTheSameReference() throws IOException {
        Knowledge knowledge = Knowledge.of(ModelCatalog.shipped().load("fifth"));
        List<Reference> here;
        try (Referee referee = new Referee(knowledge, header(144), 2)) {
            here = DECISIONS.stream().map(referee::judge).collect(Collectors.toList());
        }
        Path out = folder.resolve("there");
        try (ReferenceFile there = new ReferenceFile(out, header(144))) {
            ReferenceCommand.judge(DECISIONS, knowledge, header(144), new Post(), there);
        }
        assertEquals(
                here,
                JsonLines.read(out, ReferenceHeader.class, Reference.class).records());
    }

    @ParameterizedTest
    @ValueSource(strings = {"{", "{\"id\":1,\"colour\":2}", "[]"})
    void damagedLinesAreNamed(String line) throws IOException {
        Files.writeString(file, line + "\n", StandardOpenOption.APPEND);

        IllegalArgumentException error = assertThrows(
                IllegalArgumentException.class, () -> JsonLines.read(file, DecisionsHeader.class, Decision.class));

        assertTrue(error.getMessage().contains("line 5"), error.getMessage());
    }

    @Test
    void decisionsReadBackAsWritten() throws IOException {
        assertEquals(
                DECISIONS,
                JsonLines.read(file, DecisionsHeader.class, Decision.class).records());
    }
}
