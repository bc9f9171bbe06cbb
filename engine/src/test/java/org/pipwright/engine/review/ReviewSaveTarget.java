package org.pipwright.engine.review;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.files.InvalidWorkFileException;
import org.pipwright.engine.fuzz.SealedFile;
import org.pipwright.engine.fuzz.Seeds;
import org.pipwright.engine.fuzz.Target;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RandomRecords;

/** What a review kept of a short record. */
final class ReviewSaveTarget implements Target {
    private static final List<String> TASK = List.of("lookahead 0");
    private static final GameRecord RECORD = Beginnings.of(new RandomRecords(41).next(), 4);
    private static final List<Moment> MOMENTS = Moments.of(RECORD);

    private final SealedFile file = new SealedFile(FindingLines.KIND, "pipwright-review 1");

    @Override
    public List<byte[]> seeds() {
        Finding[] found = Setting.review(RECORD, 0).turns().stream()
                .map(ReviewedTurn::finding)
                .toArray(Finding[]::new);
        List<String> lines = FindingLines.lines(found);
        return List.of(
                Seeds.of(String.join("\n", lines)).get(0),
                Seeds.of(lines.get(0)).get(0),
                Seeds.of(lines.stream().map(ReviewSaveTarget::old).collect(Collectors.joining("\n", "1", "")))
                        .get(0));
    }

    /** A line as it was before bases were told. */
    private static String old(String line) {
        String[] fields = line.split("\t");
        StringBuilder old = new StringBuilder(String.join("\t", Arrays.copyOf(fields, 4)));
        for (int at = 5; at + 5 <= fields.length; at += 5) {
            for (int field = 0; field < 4; field++) {
                // Of the depth, how far was looked ahead for the chances is new.
                old.append('\t').append(field < 3 ? fields[at + field] : fields[at + field].replaceFirst(" \\S+$", ""));
            }
        }
        return old.toString();
    }

    private Finding[] found(byte[] data) throws IOException {
        return FindingLines.read(file.with(data, TASK), TASK, MOMENTS, Setting::terms);
    }

    @Override
    public boolean read(byte[] data) throws IOException {
        Finding[] found;
        try {
            found = found(data);
        } catch (InvalidWorkFileException e) {
            return false;
        }
        List<String> lines = FindingLines.lines(found);
        Seeds.requireSame(
                lines,
                FindingLines.lines(found(Seeds.of(String.join("\n", lines)).get(0))));
        return true;
    }
}
