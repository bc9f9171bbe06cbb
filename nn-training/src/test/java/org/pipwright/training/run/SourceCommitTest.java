package org.pipwright.training.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Folders as git leaves them. */
class SourceCommitTest {
    private static final String COMMIT = "0123456789abcdef0123456789abcdef01234567";

    @TempDir
    Path folder;

    private void write(String file, String text) throws IOException {
        Path path = folder.resolve(file);
        Files.createDirectories(path.getParent());
        Files.writeString(path, text);
    }

    @Test
    void ofABranch() throws IOException {
        write(".git/HEAD", "ref: refs/heads/main\n");
        write(".git/refs/heads/main", COMMIT + "\n");
        assertEquals(COMMIT, SourceCommit.of(folder));
    }

    @Test
    void ofNoBranch() throws IOException {
        write(".git/HEAD", COMMIT + "\n");
        assertEquals(COMMIT, SourceCommit.of(folder));
    }

    @Test
    void ofAPackedBranch() throws IOException {
        write(".git/HEAD", "ref: refs/heads/main\n");
        write(".git/packed-refs", "# pack-refs\nffff refs/heads/other-main\n" + COMMIT + " refs/heads/main\n");
        assertEquals(COMMIT, SourceCommit.of(folder));
    }

    @Test
    void ofALinkedWorktree() throws IOException {
        write("linked/.git", "gitdir: " + folder.resolve("main/.git/worktrees/linked") + "\n");
        write("main/.git/worktrees/linked/HEAD", "ref: refs/heads/side\n");
        write("main/.git/worktrees/linked/commondir", "../..\n");
        write("main/.git/refs/heads/side", COMMIT + "\n");
        assertEquals(COMMIT, SourceCommit.of(folder.resolve("linked")));
    }

    @Test
    void ofOtherFolders() throws IOException {
        assertEquals("unknown", SourceCommit.of(folder));
        write(".git/HEAD", "ref: refs/heads/main\n");
        write(".git/packed-refs", "# pack-refs\n");
        assertEquals("unknown", SourceCommit.of(folder));
    }
}
