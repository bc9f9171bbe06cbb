package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commit is that of the sources the launcher names, and of no other folder. */
class ProvenanceTest {
    private static final String HOME = "pipwright.home";
    private static final String COMMIT = "89abcdef0123456789abcdef0123456789abcdef";

    private final String before = System.getProperty(HOME);

    @AfterEach
    void restore() {
        if (before == null) {
            System.clearProperty(HOME);
        } else {
            System.setProperty(HOME, before);
        }
    }

    @Test
    void theCommitIsThatOfTheSources(@TempDir Path sources) throws IOException {
        Files.createDirectory(sources.resolve(".git"));
        Files.writeString(sources.resolve(".git/HEAD"), COMMIT + "\n");
        System.setProperty(HOME, sources.toString());
        assertEquals(COMMIT, Provenance.now(2).get("commit"));
    }

    @Test
    void withoutThemNobodyKnows() {
        System.clearProperty(HOME);
        assertEquals("unknown", Provenance.now(2).get("commit"));
    }
}
