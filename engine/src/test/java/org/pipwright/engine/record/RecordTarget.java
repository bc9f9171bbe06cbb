package org.pipwright.engine.record;

import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.fuzz.Seeds;
import org.pipwright.engine.fuzz.Target;

/** The text of records, read to the first mistake and to the last. */
final class RecordTarget implements Target {
    private static final int LINES = 14;

    /** A record cut short. */
    static GameRecord beginning(GameRecord record) {
        return RecordText.parse(
                RecordText.print(record).lines().limit(LINES).collect(Collectors.joining("\n", "", "\n")));
    }

    @Override
    public List<byte[]> seeds() {
        return Seeds.of(
                "pipwright record 1\nplayers: Ada, Ben\nmatch: 5\n\ngame 1\nAda 3-1: 8/5 6/5\n",
                "pipwright record 1\nplayers: Ada, Ben\nmatch: 3\n\ngame 1\nAda 3-1: 8/5 6/5\n# good\n",
                RecordText.print(new RandomRecords(3).next()),
                RecordText.print(beginning(new RandomRecords(4).next())));
    }

    @Override
    public boolean read(byte[] data) {
        String text = Seeds.text(data);
        RecordCheck check = RecordCheck.of(text);
        GameRecord record;
        try {
            record = RecordText.parse(text);
        } catch (InvalidRecordException e) {
            if (check.faults().isEmpty()) {
                throw new IllegalStateException("one reader finds a mistake, the other none", e);
            }
            return false;
        }
        if (!check.faults().isEmpty()) {
            throw new IllegalStateException(
                    "a mistake in a record that is read", check.faults().get(0).error());
        }
        Seeds.requireSame(record, RecordText.parse(RecordText.print(record)));
        return true;
    }
}
