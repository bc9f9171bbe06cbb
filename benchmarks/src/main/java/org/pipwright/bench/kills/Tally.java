package org.pipwright.bench.kills;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Tries and losses, of each subject and harm. */
final class Tally {
    /**
     * A cell of the table.
     *
     * @param tries how often
     * @param writing in how many of them a file was being written
     * @param losses in how many something was lost
     */
    record Cell(int tries, int writing, int losses) {
        Cell with(boolean inWrite, boolean lost) {
            return new Cell(tries + 1, writing + (inWrite ? 1 : 0), losses + (lost ? 1 : 0));
        }

        @Override
        public String toString() {
            return tries == 0 ? "-" : tries + (writing > 0 ? " (" + writing + ")" : "") + " / " + losses;
        }
    }

    private static final Cell NONE = new Cell(0, 0, 0);

    private final Map<String, Map<Harm, Cell>> cells = new LinkedHashMap<>();
    private final List<String> losses = new ArrayList<>();

    void add(Subject subject, Harm harm, boolean writing, Optional<String> lost) {
        cells.computeIfAbsent(subject.name(), name -> new EnumMap<>(Harm.class))
                .merge(harm, NONE.with(writing, lost.isPresent()), (old, one) -> old.with(writing, lost.isPresent()));
        lost.ifPresent(what -> losses.add(
                subject.name() + ", " + harm.title() + ": " + what.strip().replaceAll("\\s*\\R\\s*", " | ")));
    }

    int tries() {
        return sum(cell -> cell.tries());
    }

    int lost() {
        return sum(cell -> cell.losses());
    }

    private int sum(java.util.function.ToIntFunction<Cell> part) {
        return cells.values().stream()
                .flatMap(row -> row.values().stream())
                .mapToInt(part)
                .sum();
    }

    /** What was lost, a line each. */
    List<String> losses() {
        return losses;
    }

    /** The table, in Markdown. */
    List<String> lines() {
        List<String> lines = new ArrayList<>();
        StringBuilder head = new StringBuilder("| command |");
        StringBuilder rule = new StringBuilder("| --- |");
        for (Harm harm : Harm.values()) {
            head.append(' ').append(harm.title()).append(" |");
            rule.append(" ---: |");
        }
        lines.add(head.toString());
        lines.add(rule.toString());
        cells.forEach((name, row) -> {
            StringBuilder line = new StringBuilder("| " + name + " |");
            for (Harm harm : Harm.values()) {
                line.append(' ').append(row.getOrDefault(harm, NONE)).append(" |");
            }
            lines.add(line.toString());
        });
        return lines;
    }
}
