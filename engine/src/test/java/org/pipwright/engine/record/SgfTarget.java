package org.pipwright.engine.record;

import java.util.List;
import org.pipwright.engine.fuzz.Seeds;
import org.pipwright.engine.fuzz.Target;

/** Records in the Smart Game Format. */
final class SgfTarget implements Target {
    @Override
    public List<byte[]> seeds() {
        return Seeds.of(
                SgfText.print(RecordTarget.beginning(new RandomRecords(5).next())),
                SgfText.print(new RandomRecords(6).next()),
                SgfText.print(RecordText.parse(
                        "pipwright record 1\nplayers: Ada, Ben\nmatch: 5\n\ngame 1\nAda 3-1: 8/5 6/5\n")));
    }

    @Override
    public boolean read(byte[] data) {
        GameRecord record;
        try {
            record = SgfText.parse(Seeds.text(data));
        } catch (InvalidRecordException e) {
            return false;
        }
        Seeds.requireSame(record, RecordText.parse(RecordText.print(record)));
        if (!record.games().isEmpty()) {
            Seeds.requireSame(record, SgfText.parse(SgfText.print(record)));
        }
        return true;
    }
}
