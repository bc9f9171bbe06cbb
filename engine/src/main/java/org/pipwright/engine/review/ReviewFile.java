package org.pipwright.engine.review;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.files.SealedLines;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RecordText;

/**
 * Keeps the findings of a review in a text file, so that it can be stopped and resumed: the same comes out as without a
 * stop. What was found is a line for each turn that has been judged.
 */
public final class ReviewFile {
    private static final String TURN = "turn ";

    private static final WorkFile.Kind KIND = new WorkFile.Kind("review", "pipwright-review 2", TURN, 1 << 28)
            .reading("pipwright-review 1", FindingText::ofVersion1);

    /** Keeps nothing. */
    public static final ReviewFile NONE = new ReviewFile(KIND.none());

    private final WorkFile file;

    private ReviewFile(WorkFile file) {
        this.file = file;
    }

    /**
     * A file for a review that begins anew; an old file is replaced.
     *
     * @param path the file; its folder must exist
     * @param judge what judges, one thing a line, such as the checksums of the net and the match table
     * @return the file
     */
    public static ReviewFile fresh(Path path, List<String> judge) {
        return new ReviewFile(KIND.fresh(path, judge));
    }

    /**
     * The file of a review to go on with.
     *
     * @param path the file; it must exist
     * @param judge what judges
     * @return the file
     */
    public static ReviewFile resumed(Path path, List<String> judge) {
        return new ReviewFile(KIND.resumed(path, judge));
    }

    /** What a review is about but the judge, one thing a line. */
    static List<String> task(GameRecord record, ReviewSettings settings) {
        List<String> lines = new ArrayList<>(settings.identity());
        lines.add("record " + SealedLines.sha256(RecordText.print(record)));
        return lines;
    }

    /** What has been found so far, by turn; null where nothing has. Terms tell what a point is worth. */
    Finding[] read(List<String> task, List<Moment> moments, Function<Stakes, CubeTerms> terms) {
        Finding[] found = new Finding[moments.size()];
        for (String line : file.read(task).orElse(List.of())) {
            try {
                int end = line.indexOf('\t');
                int turn = Integer.parseInt(line.substring(TURN.length(), end));
                Moment moment = moments.get(turn);
                double point = terms.apply(moment.stakes()).point(moment.rolling());
                found[turn] = FindingText.parse(line.substring(end + 1), moment, point)
                        .orElse(null);
            } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
                throw file.damaged("a line in it belongs to no turn");
            }
        }
        return found;
    }

    /** Writes the file if the last time is some seconds ago. */
    void keep(List<String> task, Finding[] found) {
        file.keep(task, () -> lines(found));
    }

    /** Writes the file at the beginning; throws if that cannot be done. */
    void begin(List<String> task, Finding[] found) {
        file.begin(task, () -> lines(found));
    }

    /** Writes the file at the end. */
    void end(List<String> task, Finding[] found) {
        file.end(task, () -> lines(found));
    }

    /**
     * Why the file does not have what was found last.
     *
     * @return what went wrong; empty if it was written, or nothing is kept
     */
    public Optional<String> problem() {
        return file.problem();
    }

    /**
     * Has somebody told when the file cannot be written any more; the work goes on.
     *
     * @param listener given a line each time that begins
     */
    public void warning(Consumer<String> listener) {
        file.warning(listener);
    }

    private static List<String> lines(Finding[] found) {
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < found.length; i++) {
            if (found[i] != null) {
                lines.add(TURN + i + "\t" + FindingText.print(found[i]));
            }
        }
        return lines;
    }
}
