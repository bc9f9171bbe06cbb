package org.pipwright.engine.rollout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubelessStakes;
import org.pipwright.engine.files.InvalidWorkFileException;
import org.pipwright.engine.files.SealedLines;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.RandomModels;

class RolloutFileTest {
    private static final Model MODEL = RandomModels.of(21, 16);
    private static final RolloutSettings SETTINGS = RolloutSettings.DEFAULT.withTrials(180);
    private static final Position POSITION = PositionText.parse("1@3 1@9 13@off / 2@5 13@off");
    private static final Roll ROLL = Roll.of(2, 1);
    private static final List<Play> PLAYS = Plays.legal(POSITION, ROLL);

    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void stopAfterTwoRounds() {
        file = folder.resolve("some.rollout");
        compare(SETTINGS, Rollouts.FILES.fresh(file, List.of("net net")), report -> report.trials() < 72);
    }

    private static RolloutReport compare(RolloutSettings settings, WorkFile file, RolloutListener listener) {
        try (Rollouts rollouts = new Rollouts(() -> Judgement.by(new NetworkEvaluator(MODEL)), settings, 2)) {
            return rollouts.compare(POSITION, ROLL, PLAYS, new CubelessStakes(), CubeState.START, file, listener);
        }
    }

    @Test
    void stoppedAndResumedGivesTheSameAsWithoutAStop() {
        int[] rounds = new int[1];
        RolloutReport resumed =
                compare(SETTINGS, Rollouts.FILES.resumed(file, List.of("net net")), report -> ++rounds[0] > 0);
        assertEquals(compare(SETTINGS, WorkFile.NONE, RolloutListener.NONE), resumed);
        assertEquals(3, rounds[0], "only what was missing is played");
    }

    /** The second form did not have trials by their rolls. */
    @Test
    void aFileOfBeforeIsResumedWithErrorsAsTheyWereThen() throws IOException {
        String text = Files.readString(file);
        String body = text.substring(0, text.lastIndexOf("sha256 "))
                .replaceFirst("pipwright-rollout 3", "pipwright-rollout 2")
                .replaceFirst("by-rolls .*\n", "");
        Files.writeString(file, body + "sha256 " + SealedLines.sha256(body) + "\n");
        RolloutSettings more = SETTINGS.withTrials(288);
        RolloutReport resumed = compare(more, Rollouts.FILES.resumed(file, List.of("net net")), RolloutListener.NONE);
        RolloutReport whole = compare(more, WorkFile.NONE, RolloutListener.NONE);
        for (RolloutLine line : whole.lines()) {
            RolloutLine old = resumed.of(line.candidate());
            assertEquals(line.value().mean(), old.value().mean());
            assertTrue(old.plain().standardError() > line.plain().standardError(), line + ", before " + old);
        }
        assertEquals(resumed, compare(more, Rollouts.FILES.resumed(file, List.of("net net")), RolloutListener.NONE));
    }

    @Test
    void aFinishedRolloutCanBeAskedForMore() {
        RolloutReport whole = compare(SETTINGS, Rollouts.FILES.resumed(file, List.of("net net")), RolloutListener.NONE);
        assertEquals(whole, compare(SETTINGS, Rollouts.FILES.resumed(file, List.of("net net")), report -> {
            throw new AssertionError("nothing is left to play");
        }));
        RolloutSettings more = SETTINGS.withTrials(252);
        assertEquals(
                compare(more, WorkFile.NONE, RolloutListener.NONE),
                compare(more, Rollouts.FILES.resumed(file, List.of("net net")), RolloutListener.NONE));
    }

    /** Version 2 called candidate pruning and variance reduction otherwise. */
    @Test
    void filesOfVersion2AreRead() throws IOException {
        RolloutReport fresh = compare(SETTINGS, Rollouts.FILES.resumed(file, List.of("net net")), RolloutListener.NONE);
        List<String> then = SealedLines.parse("pipwright-rollout 3", Files.readString(file)).orElseThrow().stream()
                .map(line -> line.replace("pruning ", "narrowing ")
                        .replace("Pruning[", "Narrowing[")
                        .replace("variance reduction ", "luck adjusted "))
                .toList();
        assertTrue(then.contains("luck adjusted true"), then.toString());
        assertTrue(then.stream().anyMatch(line -> line.startsWith("narrowing at first [Narrowing[")), then.toString());
        Files.writeString(file, SealedLines.print("pipwright-rollout 2", then));
        assertEquals(fresh, compare(SETTINGS, Rollouts.FILES.resumed(file, List.of("net net")), report -> {
            throw new AssertionError("nothing is left to play");
        }));
    }

    @Test
    void anotherRolloutIsRefusedAndTheMessageSaysWhatDiffers() {
        for (RolloutSettings other : List.of(
                SETTINGS.withSeed(2),
                SETTINGS.withLookahead(1),
                SETTINGS.withTruncation(7),
                SETTINGS.withLuckAdjusted(false))) {
            assertThrows(
                    InvalidWorkFileException.class,
                    () -> compare(other, Rollouts.FILES.resumed(file, List.of("net net")), RolloutListener.NONE));
        }
        InvalidWorkFileException thrown = assertThrows(
                InvalidWorkFileException.class,
                () -> compare(SETTINGS, Rollouts.FILES.resumed(file, List.of("net other")), RolloutListener.NONE));
        assertTrue(thrown.getMessage().contains("'net net' where 'net other'"), thrown.getMessage());
        try (Rollouts rollouts = new Rollouts(() -> Judgement.by(new NetworkEvaluator(MODEL)), SETTINGS, 1)) {
            WorkFile resumed = Rollouts.FILES.resumed(file, List.of("net net"));
            assertThrows(
                    InvalidWorkFileException.class,
                    () -> rollouts.compare(
                            POSITION,
                            ROLL,
                            PLAYS.subList(0, PLAYS.size() - 1),
                            new CubelessStakes(),
                            CubeState.START,
                            resumed,
                            RolloutListener.NONE));
            assertThrows(InvalidWorkFileException.class, () -> rollouts.odds(POSITION, resumed, RolloutListener.NONE));
        }
    }

    @ParameterizedTest
    @CsvSource({"trials 72, trials 36", "means , means 1", "pipwright-rollout 3, pipwright-rollout 1", "sha256, sha1"})
    void aChangedFileIsRefused(String from, String to) throws IOException {
        String text = Files.readString(file);
        assertTrue(text.contains(from));
        Files.writeString(file, text.replace(from, to));
        assertThrows(
                InvalidWorkFileException.class,
                () -> compare(SETTINGS, Rollouts.FILES.resumed(file, List.of("net net")), RolloutListener.NONE));
    }

    /** Whoever writes the checksum too still cannot have nonsense taken for means. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "(?m)^trials .*$ -> trials x",
                "(?m)^trials .*$ -> trials -36",
                "(?m)^trials .*$ -> trails 72",
                "(?m)^means .*$ -> means 1 2 3",
                "(?m)^means .*$ -> means",
                "(?m)^means \\S+ -> means NaN",
                "(?m)^(means (\\S+ ){8}) -> $1-",
                "(?m)^means (.*)$ -> means $1 1",
                "(?m)^by-rolls \\d+ -> by-rolls 77",
                "(?m)^by-rolls \\d+\\.0 -> by-rolls 0.5",
                "(?m)^by-rolls (.*)$ -> by-rolls $1 1",
                "(?m)^by-rolls (.*) \\S+$ -> by-rolls $1 -1",
                "(?m)^by-rolls .*$ -> by-rules",
                "(?s)\\n.*\\n -> \n"
            })
    void aForgedFileIsRefused(String change) throws IOException {
        String text = Files.readString(file);
        String body = text.substring(0, text.lastIndexOf("sha256 "));
        String[] halves = change.split(" -> ", -1);
        String forged = body.replaceFirst(halves[0], halves[1]);
        assertNotEquals(body, forged);
        Files.writeString(file, forged + "sha256 " + SealedLines.sha256(forged) + "\n");
        assertThrows(
                InvalidWorkFileException.class,
                () -> compare(SETTINGS, Rollouts.FILES.resumed(file, List.of("net net")), RolloutListener.NONE));
    }

    @Test
    void bytesThatAreNoTextAreRefused() throws IOException {
        Files.write(file, new byte[] {(byte) 0xff, (byte) 0xfe, 0});
        assertThrows(
                InvalidWorkFileException.class,
                () -> compare(SETTINGS, Rollouts.FILES.resumed(file, List.of("net net")), RolloutListener.NONE));
    }

    @Test
    void aShortenedFileIsRefused() throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        for (int length = 0; length < bytes.length; length += 37) {
            Files.write(file, java.util.Arrays.copyOf(bytes, length));
            assertThrows(
                    InvalidWorkFileException.class,
                    () -> compare(SETTINGS, Rollouts.FILES.resumed(file, List.of("net net")), RolloutListener.NONE));
        }
    }

    /** Before anything is played. */
    @Test
    void aFileThatCannotBeWrittenIsSaidAtOnce() {
        WorkFile nowhere = Rollouts.FILES.fresh(folder.resolve("none").resolve("file"), List.of("net net"));
        assertThrows(
                UncheckedIOException.class,
                () -> compare(SETTINGS, nowhere, report -> {
                    throw new AssertionError("a round was played");
                }));
    }

    /** Whoever stops in the first round has a file to resume all the same. */
    @Test
    void aFileOfNoTrialsIsResumed() throws IOException {
        assertThrows(
                CancellationException.class,
                () -> compare(SETTINGS, Rollouts.FILES.fresh(file, List.of("net net")), new Stopped()));
        assertTrue(Files.readString(file).contains("\ntrials 0\n"));
        assertEquals(
                compare(SETTINGS, WorkFile.NONE, RolloutListener.NONE),
                compare(SETTINGS, Rollouts.FILES.resumed(file, List.of("net net")), RolloutListener.NONE));
    }

    @Test
    void aMissingFileIsSaid() {
        WorkFile missing = Rollouts.FILES.resumed(folder.resolve("none"), List.of("net net"));
        assertThrows(UncheckedIOException.class, () -> compare(SETTINGS, missing, RolloutListener.NONE));
    }
}
