package org.pipwright.engine.matchtable;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pipwright.engine.files.PartFile;
import org.pipwright.engine.score.MatchScore;

/**
 * A folder that keeps what has been solved at some scores, a file each. One that cannot be read or written costs only the
 * time to solve again, so nothing is said of it: who opens the exact tables there is told already.
 */
final class EndingFolder {
    /** Files kept, of 27 MB each up to 16-away and 41 MB up to 25-away; those written longest ago go first. */
    static final int FILES = 8;

    private static final String BEGINS = "match-ending-";
    private static final String ENDS = ".table";

    private final Path folder;

    EndingFolder(Path folder) {
        this.folder = folder;
    }

    /** The file of a score, whether there is one or not. */
    Path file(MatchScore score) {
        return folder.resolve(
                BEGINS + score.mine() + "-" + score.theirs() + (score.crawford() ? "-crawford" : "") + ENDS);
    }

    /** What is kept of a score; empty if nothing that can be used is. */
    Optional<EndingFile> open(EndingCubes cubes, int arrangements, int width) {
        try {
            return EndingFile.open(file(cubes.score()), cubes, arrangements, width);
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** Keeps what is solved at a score. */
    void keep(EndingsAtScore endings) {
        try {
            Files.createDirectories(folder);
            PartFile.removeAbandoned(folder);
            endings.write(file(endings.cubes().score()));
            makeRoom();
        } catch (IOException e) {
            // Solved again next time.
        }
    }

    private void makeRoom() throws IOException {
        List<Path> files;
        try (Stream<Path> all = Files.list(folder)) {
            files = all.filter(file -> {
                        String name = file.getFileName().toString();
                        return name.startsWith(BEGINS) && name.endsWith(ENDS);
                    })
                    .collect(Collectors.toCollection(ArrayList::new));
        }
        if (files.size() > FILES) {
            files.sort(Comparator.comparing(EndingFolder::written));
            for (Path eldest : files.subList(0, files.size() - FILES)) {
                Files.deleteIfExists(eldest);
            }
        }
    }

    private static FileTime written(Path file) {
        try {
            return Files.getLastModifiedTime(file);
        } catch (IOException e) {
            return FileTime.fromMillis(0);
        }
    }
}
