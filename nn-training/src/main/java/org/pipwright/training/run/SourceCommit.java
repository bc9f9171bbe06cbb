package org.pipwright.training.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads which commit is checked out, without git: it need not be installed where a run is made. */
final class SourceCommit {
    static final String UNKNOWN = "unknown";

    private SourceCommit() {}

    /** The commit of a folder of sources, which may be a linked worktree; "unknown" if it is none of git's. */
    static String of(Path sources) {
        try {
            Path git = sources.resolve(".git");
            if (Files.isRegularFile(git)) {
                git = sources.resolve(Files.readString(git).strip().replaceFirst("^gitdir: ", ""));
            }
            String head = Files.readString(git.resolve("HEAD")).strip();
            return head.startsWith("ref: ") ? ofBranch(common(git), head.substring(5)) : head;
        } catch (IOException e) {
            return UNKNOWN;
        }
    }

    /** What worktrees share. */
    private static Path common(Path git) throws IOException {
        Path file = git.resolve("commondir");
        return Files.exists(file) ? git.resolve(Files.readString(file).strip()) : git;
    }

    private static String ofBranch(Path git, String name) throws IOException {
        Path loose = git.resolve(name);
        if (Files.exists(loose)) {
            return Files.readString(loose).strip();
        }
        return Files.readAllLines(git.resolve("packed-refs")).stream()
                .filter(line -> line.endsWith(" " + name))
                .map(line -> line.substring(0, line.indexOf(' ')))
                .findFirst()
                .orElse(UNKNOWN);
    }
}
