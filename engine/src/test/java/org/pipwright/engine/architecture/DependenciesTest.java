package org.pipwright.engine.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DependenciesTest {
    private static final String SUM_OF_ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    @TempDir
    Path folder;

    private Path jar(String name) throws IOException {
        Path jar = folder.resolve("repository").resolve(name);
        Files.createDirectories(jar.getParent());
        return Files.writeString(jar, "abc");
    }

    private static List<String> faults(Path jar, String name, String sum) throws IOException {
        return Dependencies.faults(new String[] {jar.toString(), "target/classes"}, Map.of(name, sum));
    }

    /** The checksum is that of FIPS 180-2, appendix B.1. */
    @Test
    void aChangedJarIsTold() throws IOException {
        Path jar = jar("com/some/thing/1/thing-1.jar");
        assertEquals(List.of(), faults(jar, "com/some/thing/1/thing-1.jar", SUM_OF_ABC));
        List<String> faults = faults(jar, "com/some/thing/1/thing-1.jar", SUM_OF_ABC.replace('b', 'c'));
        assertEquals(1, faults.size());
        assertTrue(faults.get(0).endsWith(SUM_OF_ABC), faults.get(0));
    }

    @Test
    void ourOwnAreNotListed() throws IOException {
        assertEquals(List.of(), faults(jar("org/pipwright/engine/1/engine-1.jar"), "x", "y"));
    }
}
