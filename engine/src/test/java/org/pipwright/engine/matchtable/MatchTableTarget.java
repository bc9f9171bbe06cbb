package org.pipwright.engine.matchtable;

import java.util.List;
import org.pipwright.engine.fuzz.Seeds;
import org.pipwright.engine.fuzz.Target;

/** Match tables as CSV. What is taken must keep its order when it is rounded to a millionth. */
final class MatchTableTarget implements Target {
    @Override
    public List<byte[]> seeds() {
        return Seeds.of(
                "away,1,2,3\n1,0.5,0.7,0.75\n2,0.3,0.5,0.6\n3,0.25,0.4,0.5\nafter crawford,0.5,0.48,0.32\n",
                "# mine\naway,1,2\n1,0.5,0.7\n2,0.3,0.5\nafter crawford,.5,.5\n");
    }

    @Override
    public boolean read(byte[] data) {
        MatchTable table;
        try {
            table = MatchTableCsv.parse(Seeds.text(data));
        } catch (InvalidMatchTableException e) {
            return false;
        }
        String text = MatchTableCsv.print(table, List.of());
        Seeds.requireSame(text, MatchTableCsv.print(MatchTableCsv.parse(text), List.of()));
        return true;
    }
}
