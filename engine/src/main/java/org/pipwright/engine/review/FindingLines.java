package org.pipwright.engine.review;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.files.SealedLines;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RecordText;

/** The findings of a review as lines of a file, one for each turn that has been judged. */
final class FindingLines {
    private static final String TURN = "turn ";

    /** Files of reviews. */
    static final WorkFile.Kind KIND = new WorkFile.Kind("review", "pipwright-review 2", TURN, 1 << 28)
            .reading("pipwright-review 1", FindingText::ofVersion1);

    private FindingLines() {}

    /** What a review is about but the judge, one thing a line. */
    static List<String> task(GameRecord record, ReviewSettings settings) {
        List<String> lines = new ArrayList<>(settings.identity());
        lines.add("record " + SealedLines.sha256(RecordText.print(record)));
        return lines;
    }

    /** What has been found so far, by turn; null where nothing has. Terms tell what a point is worth. */
    static Finding[] read(WorkFile file, List<String> task, List<Moment> moments, Function<Stakes, CubeTerms> terms) {
        Finding[] found = new Finding[moments.size()];
        for (String line : file.read(task).orElse(List.of())) {
            try {
                int end = line.indexOf('\t');
                int turn = Integer.parseInt(line.substring(TURN.length(), end));
                Moment moment = moments.get(turn);
                found[turn] = finding(line.substring(end + 1), moment, terms);
            } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
                throw file.damaged("a line in it belongs to no turn");
            }
        }
        return found;
    }

    /** What a line says of a turn; null if it does not say all. Terms tell what a point is worth. */
    static Finding finding(String text, Moment moment, Function<Stakes, CubeTerms> terms) {
        double point = terms.apply(moment.stakes()).point(moment.rolling());
        return FindingText.parse(text, moment, point).orElse(null);
    }

    /** The lines, which read back exactly. */
    static List<String> lines(Finding[] found) {
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < found.length; i++) {
            if (found[i] != null) {
                lines.add(TURN + i + "\t" + FindingText.print(found[i]));
            }
        }
        return lines;
    }
}
