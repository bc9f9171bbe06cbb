package org.pipwright.cli.desk;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.pipwright.engine.record.GameRecord;

/**
 * Records that can be gone through, by what they are called in addresses: a number for those the user opened, {@code table-}
 * and a number for those of the tables.
 */
final class Records {
    private static final String OF_TABLES = "table-";

    private final List<String> files;
    private final List<GameRecord> records;
    private final Tables tables;
    private final Function<GameRecord, RecordReview> begin;
    private final Map<String, RecordReview> reviews = new HashMap<>();

    /**
     * A record and its review.
     *
     * @param id what it is called in addresses
     * @param name the file, as the user named it; empty for a table's
     * @param review the record and its review
     */
    record Opened(String id, String name, RecordReview review) {}

    /**
     * The records of a desk.
     *
     * @param opened those the user opened, by their files
     * @param tables the tables of the desk
     * @param begin begins a review
     */
    Records(Map<String, GameRecord> opened, Tables tables, Function<GameRecord, RecordReview> begin) {
        files = new ArrayList<>(opened.keySet());
        records = new ArrayList<>(opened.values());
        this.tables = tables;
        this.begin = begin;
    }

    /** The files that the user opened; the first is called 1, and so on. */
    List<String> files() {
        return files;
    }

    /** A record with a turn in it. */
    Optional<Opened> find(String id) {
        if (id.matches("[0-9]{1,4}")) {
            int number = Integer.parseInt(id);
            return number >= 1 && number <= records.size()
                    ? Optional.of(new Opened(id, files.get(number - 1), review(id, records.get(number - 1))))
                    : Optional.empty();
        }
        if (!id.matches(OF_TABLES + "[0-9]{1,4}")) {
            return Optional.empty();
        }
        return tables.find(Integer.parseInt(id.substring(OF_TABLES.length())))
                .map(table -> new Opened(id, "", review(id, table.record())))
                .filter(opened -> !opened.review().moments().isEmpty());
    }

    /** What was played since is judged anew. */
    private synchronized RecordReview review(String id, GameRecord record) {
        RecordReview known = reviews.get(id);
        if (known == null || !known.record().equals(record)) {
            known = begin.apply(record);
            reviews.put(id, known);
        }
        return known;
    }
}
