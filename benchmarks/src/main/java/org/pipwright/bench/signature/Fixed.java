package org.pipwright.bench.signature;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.pipwright.bench.BenchPositions;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RecordText;
import org.pipwright.engine.roll.Roll;

/** The questions that are always the same. */
final class Fixed {
    /** Deeper questions take longer: so many positions of each kind at lookahead 0, 1 and 2. */
    private static final int[] COUNTS = {24, 6, 2};

    /** A short game with all that can happen to a cube, made up. */
    private static final String TURNS = "Ada 6-2: 24/18 13/11\n"
            + "Ben 4-4: 24/20(2) 13/9(2)\n"
            + "Ada 5-3: 13/8 6/3\n"
            + "Ben doubles\n"
            + "Ada takes\n"
            + "Ben 6-1: 13/7* 8/7\n";

    private Fixed() {}

    /** Positions with contact. */
    static List<Position> contact(int lookahead) {
        return some(Position::contact, COUNTS[lookahead]);
    }

    /** Positions without: beyond the tables, within the distributions, and the last one within the exact table. */
    static List<Position> races(int lookahead) {
        List<Position> races = new ArrayList<>(some(position -> !position.contact(), COUNTS[lookahead]));
        races.add(PositionText.parse("2@2 1@5 / 2@3 1@6"));
        return races;
    }

    /** The roll that goes with the position of an index: each comes up sooner or later. */
    static Roll roll(int index) {
        return Roll.all().get(8 * index % Roll.COUNT);
    }

    /** The game, of a match or for money. */
    static GameRecord record(boolean match) {
        return record(match ? "match: 3" : "money: jacoby", TURNS);
    }

    /** The same moves in a match to 1 point, which has no cube. */
    static GameRecord cubelessRecord() {
        return record("match: 1", TURNS.replaceAll("\\w+ (doubles|takes)\n", ""));
    }

    private static GameRecord record(String rules, String turns) {
        return RecordText.parse("pipwright record 1\nplayers: Ada, Ben\n" + rules + "\n\ngame 1\n" + turns);
    }

    /** Evenly over those of the list that are wanted. */
    private static List<Position> some(Predicate<Position> wanted, int count) {
        List<Position> all = BenchPositions.netPlay().stream().filter(wanted).collect(Collectors.toList());
        return IntStream.range(0, count)
                .mapToObj(i -> all.get(i * all.size() / count))
                .collect(Collectors.toList());
    }
}
