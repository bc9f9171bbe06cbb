package org.pipwright.engine.matchtable;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubeWalk;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.score.MatchScore;

/** What is kept of match endings spares work and changes no value, whatever is found in the folder. */
class EndingFolderTest {
    private static final MatchScore SCORE = new MatchScore(4, 5, false);
    private static final List<Position> FAR = positions("6@6 / 6@6", "6@6 / 5@6 1@1", "3@6 3@5 / 6@6");
    private static final List<Position> NEAR = positions("6@4 / 6@6", "2@4 3@3 / 6@6", "6@3 / 5@6 1@5");

    @TempDir
    private static Path first;

    /** What was written there by the first run, and what it said. */
    private static byte[] written;

    private static List<CubeValues> said;

    @TempDir
    private Path folder;

    private static List<Position> positions(String... texts) {
        return Stream.of(texts).map(PositionText::parse).collect(Collectors.toList());
    }

    private static MatchTable keeping(Path folder) {
        MatchTable table = ShippedMatchTable.load();
        table.keepEndingsIn(folder);
        return table;
    }

    private static List<CubeValues> values(MatchTable table, List<Position> positions) {
        List<CubeValues> values = values(table, positions, SCORE);
        values.addAll(values(table, positions, SCORE.swapped()));
        return values;
    }

    private static List<CubeValues> values(MatchTable table, List<Position> positions, MatchScore score) {
        MatchStakes stakes = new MatchStakes(score);
        return positions.stream()
                .map(position -> table.endings()
                        .values(position, CubeState.START, stakes)
                        .orElseThrow())
                .collect(Collectors.toCollection(ArrayList::new));
    }

    private static Path file(Path folder) {
        return new EndingFolder(folder).file(SCORE);
    }

    @BeforeAll
    static void solve() throws IOException {
        said = values(keeping(first.resolve("made/at/need")), FAR);
        written = Files.readAllBytes(file(first.resolve("made/at/need")));
    }

    @Test
    void keepingChangesNoValue() {
        assertEquals(values(ShippedMatchTable.load(), FAR), said);
    }

    @Test
    void theNextRunReadsOnlyWhatItAsksFor() throws IOException {
        Files.write(file(folder), written);
        MatchTable table = keeping(folder);
        List<Position> one = FAR.subList(0, 1);
        assertEquals(said.get(0), values(table, one).get(0));
        assertTrue(
                table.endings().size() < written.length / Integer.BYTES / 4,
                table.endings().size() + " numbers");
        assertEquals(said, values(table, FAR));
        assertArrayEquals(written, Files.readAllBytes(file(folder)));
    }

    @Test
    void goesOnFromWhatWasKept() throws IOException {
        List<CubeValues> near = values(keeping(folder), NEAR, SCORE);
        long size = Files.size(file(folder));
        assertTrue(size < written.length, size + " bytes");
        MatchTable after = keeping(folder);
        assertEquals(near, values(after, NEAR, SCORE));
        assertEquals(said, values(after, FAR));
        assertTrue(Files.size(file(folder)) > size);
        assertEquals(said, values(keeping(folder), FAR));
    }

    @Test
    void whatIsDamagedIsSolvedAgain() throws IOException {
        byte[] damaged = written.clone();
        damaged[damaged.length / 2] ^= 4;
        Files.write(file(folder), damaged);
        assertEquals(said, values(keeping(folder), FAR));
        assertArrayEquals(written, Files.readAllBytes(file(folder)));
    }

    /** Cut anywhere, longer than it should be, or changed in any byte of its header. */
    @Test
    void nothingButAWholeFileIsOpened() throws IOException {
        assertTrue(opens(SCORE, written));
        for (int length :
                new int[] {0, 7, 208, 215, 216, 5000, 216 + 924 * 120, written.length - 4, written.length + 4}) {
            assertFalse(opens(SCORE, Arrays.copyOf(written, length)), length + " bytes");
        }
        Files.write(file(folder), written);
        try (FileChannel channel = FileChannel.open(file(folder), StandardOpenOption.WRITE)) {
            for (int at = 0; at < 212; at++) {
                channel.write(ByteBuffer.wrap(new byte[] {(byte) (written[at] ^ 1)}), at);
                assertFalse(opens(SCORE), "byte " + at);
                channel.write(ByteBuffer.wrap(new byte[] {written[at]}), at);
            }
        }
        assertTrue(opens(SCORE));
    }

    @Test
    void anotherScoreIsNotTaken() throws IOException {
        assertFalse(opens(new MatchScore(4, 6, false), written));
        assertFalse(opens(SCORE.swapped(), written));
    }

    private boolean opens(MatchScore score, byte[] content) throws IOException {
        Files.write(new EndingFolder(folder).file(score), content);
        return opens(score);
    }

    private boolean opens(MatchScore score) {
        EndingCubes cubes = new EndingCubes(score, ShippedMatchTable.load());
        int width = new EndingLanes(cubes.lanes()).width();
        return new EndingFolder(folder)
                .open(cubes, EndgameTables.LAST_SIX.size(), width)
                .isPresent();
    }

    @Test
    void otherChancesAreNotTaken() throws IOException {
        Files.write(file(folder), written);
        CubeWalk walk = new CubeWalk(20, 2);
        MatchTable other = MatchTableBuilder.build(9, 0.25, 0.01, walk, walk);
        List<CubeValues> own = values(other, NEAR);
        MatchTable again = MatchTableBuilder.build(9, 0.25, 0.01, walk, walk);
        again.keepEndingsIn(folder);
        assertEquals(own, values(again, NEAR));
        assertNotEquals(own, values(ShippedMatchTable.load(), NEAR));
    }

    @Test
    void aFolderThatCannotBeCostsOnlyTime() throws IOException {
        Path none = Files.createFile(folder.resolve("file")).resolve("folder");
        assertEquals(said, values(keeping(none), FAR));
    }

    @Test
    void theOldestGo() throws IOException {
        for (int i = 0; i < EndingFolder.FILES; i++) {
            Path old = Files.createFile(folder.resolve("match-ending-20-" + i + ".table"));
            Files.setLastModifiedTime(old, FileTime.fromMillis(1000L * (i == 0 ? 100 : i)));
        }
        Path other = Files.createFile(folder.resolve("twosided-6x6-v1.table"));
        Files.setLastModifiedTime(other, FileTime.fromMillis(0));
        values(keeping(folder), FAR);
        try (Stream<Path> left = Files.list(folder)) {
            assertEquals(
                    Stream.concat(
                                    Stream.of(
                                            "match-ending-4-5.table",
                                            other.getFileName().toString()),
                                    Stream.of(0, 2, 3, 4, 5, 6, 7).map(i -> "match-ending-20-" + i + ".table"))
                            .sorted()
                            .collect(Collectors.toList()),
                    left.map(path -> path.getFileName().toString()).sorted().collect(Collectors.toList()));
        }
    }
}
