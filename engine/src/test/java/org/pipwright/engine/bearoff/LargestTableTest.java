package org.pipwright.engine.bearoff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LargestTableTest {
    private static final SideIndex SMALL = new SideIndex(6, 3);
    private static final SideIndex MIDDLE = new SideIndex(7, 3);
    private static final SideIndex LARGE = new SideIndex(8, 3);

    @TempDir
    Path temporary;

    private final List<String> notes = new ArrayList<>();

    private final TableListener listener = new TableListener() {
        @Override
        public void note(String line) {
            notes.add(line);
        }

        @Override
        public TableProgress building(String table) {
            throw new AssertionError("a table is built: " + table);
        }
    };

    @BeforeEach
    void build() {
        TableFolder folder = new TableFolder(temporary);
        folder.oneSided(MIDDLE, 1, TableListener.SILENT);
        folder.oneSided(LARGE, 1, TableListener.SILENT);
    }

    private SideIndex largest(TableKind kind, SideIndex least) {
        return LargestTable.in(new TableFolder(temporary), kind, least, listener);
    }

    @Test
    void theLargestThatCoversAllIsTaken() {
        assertEquals(8, largest(TableKind.ONE_SIDED, SMALL).points());
        SideIndex more = new SideIndex(6, 4);
        assertEquals(more, largest(TableKind.ONE_SIDED, more), "none covers four checkers");
        assertEquals(SMALL, largest(TableKind.TWO_SIDED, SMALL), "that is of the other kind");
        assertEquals(List.of(), notes);
    }

    /** Damage in the header, in the content, a file cut short and an empty one. */
    @ParameterizedTest
    @ValueSource(ints = {9, 20, 500, -100, 0})
    void aDamagedOneIsToldAndLeftOut(int at) throws IOException {
        Path file = new TableFolder(temporary).file(TableKind.ONE_SIDED, LARGE);
        byte[] bytes = Files.readAllBytes(file);
        if (at > 0) {
            bytes[at] ^= 1;
        }
        Files.write(file, at > 0 ? bytes : Arrays.copyOf(bytes, -at));
        assertEquals(7, largest(TableKind.ONE_SIDED, SMALL).points());
        assertEquals(1, notes.size());
        String line = notes.get(0);
        assertTrue(line.startsWith("the table '" + file + "' is damaged ("), line);
        assertTrue(line.endsWith(") and left out: remove it, or build it again with pipwright tables"), line);
    }

    @Test
    void oneThatCannotBeReadIsToldAndLeftOut() throws IOException {
        Path file = new TableFolder(temporary).file(TableKind.ONE_SIDED, LARGE);
        Files.delete(file);
        Files.createDirectory(file);
        assertEquals(7, largest(TableKind.ONE_SIDED, SMALL).points());
        assertTrue(notes.get(0).startsWith("the table '" + file + "' cannot be read ("), notes.toString());
    }
}
