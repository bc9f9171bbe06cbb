package org.pipwright.engine.review;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.files.AtomicFile;
import org.pipwright.engine.files.SealedLines;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RecordText;
import org.pipwright.engine.text.Excerpt;

/**
 * Keeps the findings of a review in a text file, so that it can be stopped and resumed: the same comes out as without a
 * stop. Lines of the file: form and version; what the review is about; a line for each turn that has been judged; the
 * SHA-256 of all before. Written atomically.
 */
public final class ReviewFile {
    /** Keeps nothing. */
    public static final ReviewFile NONE = new ReviewFile(null, List.of(), false);

    private static final String FORM = "pipwright-review 1";

    /** Before the lines of turns, so that they are told from what the review is about. */
    private static final String TURN = "turn ";

    private static final long MOST_BYTES = 1L << 28;

    private static final long INTERVAL = Duration.ofSeconds(10).toNanos();

    private final Path path;
    private final List<String> judge;
    private final boolean resume;
    private long lastWritten = System.nanoTime();

    private ReviewFile(Path path, List<String> judge, boolean resume) {
        this.path = path;
        this.judge = List.copyOf(judge);
        this.resume = resume;
    }

    /**
     * A file for a review that begins anew; an old file is replaced.
     *
     * @param path the file; its folder must exist
     * @param judge what judges, one thing a line, such as the checksums of the net and the match table
     * @return the file
     */
    public static ReviewFile fresh(Path path, List<String> judge) {
        return new ReviewFile(path, judge, false);
    }

    /**
     * The file of a review to go on with.
     *
     * @param path the file; it must exist
     * @param judge what judges
     * @return the file
     */
    public static ReviewFile resumed(Path path, List<String> judge) {
        return new ReviewFile(path, judge, true);
    }

    /** What a review is about, one thing a line. */
    List<String> about(GameRecord record, ReviewSettings settings) {
        List<String> lines = new ArrayList<>(judge);
        lines.addAll(settings.identity());
        lines.add("record " + SealedLines.sha256(RecordText.print(record)));
        return lines;
    }

    /** What has been found so far, by turn; null where nothing has. */
    Finding[] read(List<String> about, List<Moment> moments) {
        if (!resume) {
            return new Finding[moments.size()];
        }
        try {
            if (Files.size(path) > MOST_BYTES) {
                throw damaged("it is too large");
            }
            List<String> lines =
                    SealedLines.parse(FORM, Files.readString(path)).orElseThrow(() -> damaged("its checksum is wrong"));
            requireSame(lines, about);
            return findings(lines.subList(about.size(), lines.size()), moments);
        } catch (CharacterCodingException e) {
            throw damaged("it is not text");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Finding[] findings(List<String> lines, List<Moment> moments) {
        Finding[] found = new Finding[moments.size()];
        for (String line : lines) {
            try {
                int end = line.indexOf('\t');
                int turn = Integer.parseInt(line.substring(TURN.length(), end));
                found[turn] = FindingText.parse(line.substring(end + 1), moments.get(turn));
            } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
                throw damaged("a line in it belongs to no turn");
            }
        }
        return found;
    }

    private void requireSame(List<String> lines, List<String> about) {
        for (int i = 0; i < about.size(); i++) {
            String there = i < lines.size() ? lines.get(i) : "nothing more";
            if (!there.equals(about.get(i))) {
                throw new InvalidReviewFileException("'" + path + "' belongs to another review: it has '"
                        + Excerpt.of(there) + "' where '" + Excerpt.of(about.get(i))
                        + "' is asked for; ask for the same, or begin anew with --save");
            }
        }
    }

    private InvalidReviewFileException damaged(String how) {
        return new InvalidReviewFileException(
                "'" + path + "' is not a whole review file (" + how + "): use another copy, or begin anew with --save");
    }

    /** Writes the file if the last time is some seconds ago. */
    void keep(List<String> about, Finding[] found) {
        if (path != null && System.nanoTime() - lastWritten > INTERVAL) {
            write(about, found);
        }
    }

    /** Writes the file. */
    void write(List<String> about, Finding[] found) {
        if (path == null) {
            return;
        }
        List<String> lines = new ArrayList<>(about);
        for (int i = 0; i < found.length; i++) {
            if (found[i] != null) {
                lines.add(TURN + i + "\t" + FindingText.print(found[i]));
            }
        }
        byte[] bytes = SealedLines.print(FORM, lines).getBytes(StandardCharsets.UTF_8);
        try {
            AtomicFile.write(path, out -> out.write(bytes));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        lastWritten = System.nanoTime();
    }
}
