package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TableFolderTest {
    private static final SideIndex SMALL = new SideIndex(6, 3);

    @TempDir
    Path temporary;

    private final Heard heard = new Heard();

    /** Keeps what it is told. */
    private static final class Heard implements TableListener {
        final List<String> notes = new ArrayList<>();
        final List<String> built = new ArrayList<>();
        double share;

        @Override
        public void note(String line) {
            notes.add(line);
        }

        @Override
        public TableProgress building(String table) {
            built.add(table);
            return done -> share = done;
        }
    }

    private TableFolder folder() {
        return new TableFolder(temporary.resolve("a").resolve("b"));
    }

    @Test
    void buildsOnceThenOpens() throws Exception {
        ByteBuffer first = folder().oneSided(SMALL, 1, heard).content();
        assertEquals(List.of("one-sided table (3 checkers on 6 points)"), heard.built);
        assertEquals(1, heard.share);
        ByteBuffer second = folder().oneSided(SMALL, 1, heard).content();
        assertEquals(1, heard.built.size());
        assertEquals(first, second);
        assertTrue(second.isDirect(), "mapped");
        folder().check(TableKind.ONE_SIDED, SMALL);
        assertEquals(List.of(), heard.notes);
    }

    @Test
    void twoSidedTablesAreKeptToo() throws Exception {
        ByteBuffer first = folder().twoSided(SMALL, 1, heard).content();
        assertEquals(first, folder().twoSided(SMALL, 1, heard).content());
        assertEquals(List.of("two-sided table (3 checkers on 6 points)"), heard.built);
        folder().check(TableKind.TWO_SIDED, SMALL);
    }

    @Test
    void largeTablesAreBuiltInTheirFile() throws Exception {
        ByteBuffer expected = TwoSidedTable.build(SMALL, 1, TableProgress.NONE).content();
        Path file = temporary.resolve("large.table");
        ByteBuffer made = TableFile.create(
                file,
                TableKind.TWO_SIDED,
                SMALL,
                TwoSidedTable.contentSize(SMALL),
                content -> TwoSidedTable.fill(SMALL, content, 2, TableProgress.NONE));
        assertEquals(expected, made);
        assertEquals(expected, TableFile.open(file, TableKind.TWO_SIDED, SMALL, true));
        assertEquals(1, files().size());
        assertEquals(usualPermissions(), PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
    }

    /** All of the file is on the disk before it is mapped: a full disk would end the virtual machine's patience later. */
    @Test
    @EnabledOnOs(OS.LINUX)
    void roomIsReservedBeforeTheFileIsMapped() throws Exception {
        long size = 3_000_001;
        List<Long> reserved = new ArrayList<>();
        Path file = temporary.resolve("large.table");
        TableFile.create(file, TableKind.TWO_SIDED, SMALL, size, content -> reserved.add(onDisk()));
        assertTrue(reserved.get(0) >= size, reserved + " bytes on the disk");
        assertEquals(TableFile.HEADER + size, Files.size(file));
    }

    /** Bytes that the only file takes, as stat (GNU coreutils) counts them. */
    private long onDisk() {
        try {
            Process stat =
                    new ProcessBuilder("stat", "-c", "%b %B", files().get(0).toString()).start();
            String[] blocks = stat.inputReader().readLine().split(" ");
            return Long.parseLong(blocks[0]) * Long.parseLong(blocks[1]);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void whatAKilledBuildLeftIsRemoved() throws IOException {
        Path folder = Files.createDirectories(temporary.resolve("a").resolve("b"));
        Path left = folder.resolve(".twosided-6x9-v1.table.01234567-89ab-cdef-0123-456789abcdef.part");
        Files.write(left, new byte[1000]);
        Files.setLastModifiedTime(left, FileTime.fromMillis(0));
        folder().oneSided(SMALL, 1, heard);
        assertFalse(Files.exists(left));
    }

    @Test
    void whoWantsTablesKeptIsToldWhenTheyAreNot() throws IOException {
        Path notAFolder = Files.createFile(temporary.resolve("file"));
        String message = assertThrows(
                        UncheckedIOException.class,
                        () -> new TableFolder(notAFolder).keeping().oneSided(SMALL, 1, heard))
                .getMessage();
        assertEquals(
                "the table cannot be kept in '" + notAFolder + "' (file already exists, " + notAFolder + ")", message);
        assertEquals(
                List.of(),
                heard.notes.stream().filter(line -> line.contains("kept")).toList());
    }

    /** What the user's settings give a new file. */
    private String usualPermissions() throws IOException {
        Path plain = Files.createFile(temporary.resolve("plain"));
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(plain));
    }

    private List<Path> files() throws IOException {
        try (Stream<Path> all = Files.walk(temporary)) {
            return all.filter(Files::isRegularFile).toList();
        }
    }

    /** Damage at the start, in the header, in the sizes and in the content, and files cut short. */
    @ParameterizedTest
    @ValueSource(ints = {0, 9, 13, 17, 21, 25, 33, 37, 64, 500, -1, -100})
    void damagedFilesAreBuiltAgain(int at) throws Exception {
        ByteBuffer good = folder().oneSided(SMALL, 1, heard).content();
        Path file = folder().file(TableKind.ONE_SIDED, SMALL);
        byte[] bytes = Files.readAllBytes(file);
        if (at >= 0) {
            bytes[at] ^= 4;
            Files.write(file, bytes);
        } else {
            Files.write(file, Arrays.copyOf(bytes, at == -1 ? bytes.length - 1 : -at / 2));
        }
        assertThrows(DamagedTableException.class, () -> folder().check(TableKind.ONE_SIDED, SMALL));
        assertEquals(good, folder().oneSided(SMALL, 1, heard).content());
        assertEquals(2, heard.built.size());
        assertEquals(1, heard.notes.size());
        assertTrue(
                heard.notes.get(0).matches("the table '.*' is damaged \\(.*\\): building it again"),
                heard.notes.get(0));
        folder().check(TableKind.ONE_SIDED, SMALL);
    }

    @Test
    void contentsAreComparedOnceAFolder() throws Exception {
        TableFolder folder = folder();
        folder.oneSided(SMALL, 1, heard);
        folder.check(TableKind.ONE_SIDED, SMALL);
        Path file = folder.file(TableKind.ONE_SIDED, SMALL);
        byte[] bytes = Files.readAllBytes(file);
        bytes[bytes.length - 1] ^= 1;
        Files.write(file, bytes);
        folder.oneSided(SMALL, 1, heard);
        assertEquals(List.of(), heard.notes, "this object has seen it whole");
        folder().oneSided(SMALL, 1, heard);
        assertEquals(1, heard.notes.size(), "another one has not");
    }

    @Test
    void aFolderThatCannotBeWrittenCostsTime() throws Exception {
        Path notAFolder = Files.createFile(temporary.resolve("file"));
        OneSidedTable table = new TableFolder(notAFolder).oneSided(SMALL, 1, heard);
        assertEquals(1.25, table.mean(table.index().of(CheckRows.side("0,0,0,0,0,1"), 0)), 1e-6);
        assertTrue(heard.notes.stream().anyMatch(line -> line.contains("cannot be kept")), heard.notes.toString());
    }

    @Test
    void severalBuildersAtOnceLeaveOneWholeFile() throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(8);
        try {
            List<Callable<ByteBuffer>> tasks = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                tasks.add(
                        () -> folder().oneSided(SMALL, 1, TableListener.SILENT).content());
            }
            ByteBuffer expected =
                    OneSidedTable.build(SMALL, 1, TableProgress.NONE).content();
            for (Future<ByteBuffer> future : pool.invokeAll(tasks)) {
                assertEquals(expected, future.get());
            }
        } finally {
            pool.shutdownNow();
        }
        assertEquals(List.of(folder().file(TableKind.ONE_SIDED, SMALL)), files());
        folder().check(TableKind.ONE_SIDED, SMALL);
    }

    @Test
    void entriesAreTheFilesOfTables() throws Exception {
        assertEquals(List.of(), folder().entries());
        folder().twoSided(SMALL, 1, heard);
        folder().oneSided(SMALL, 1, heard);
        for (String other : List.of("onesided-6x16-v1.table", "onesided-6x3-v9.table", "x-6x3-v1.table", "notes.txt")) {
            Files.createFile(folder().path().resolve(other));
        }
        assertEquals(
                List.of("ONE_SIDED 6 3", "TWO_SIDED 6 3"),
                folder().entries().stream()
                        .map(entry -> entry.kind() + " " + entry.index().points() + " "
                                + entry.index().checkers())
                        .toList());
    }

    @Test
    void theUsersFolder() {
        assertEquals(
                Path.of("/x"),
                TableFolder.ofUser(Map.of("PIPWRIGHT_CACHE", "/x", "XDG_CACHE_HOME", "/y"))
                        .path());
        assertEquals(
                Path.of("/y/pipwright"),
                TableFolder.ofUser(Map.of("XDG_CACHE_HOME", "/y")).path());
        Path home = Path.of(System.getProperty("user.home"), ".cache", "pipwright");
        assertEquals(
                home, TableFolder.ofUser(Map.of("XDG_CACHE_HOME", "relative")).path());
        assertEquals(home, TableFolder.ofUser(Map.of()).path());
    }

    @Test
    void namesTellSizes() {
        assertEquals("onesided-6x3-v1.table", TableKind.ONE_SIDED.fileName(SMALL));
        assertFalse(TableKind.TWO_SIDED.fileName(SMALL).equals(TableKind.ONE_SIDED.fileName(SMALL)));
    }
}
