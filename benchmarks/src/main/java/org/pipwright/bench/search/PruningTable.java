package org.pipwright.bench.search;

import java.lang.management.ManagementFactory;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import org.pipwright.engine.search.Choice;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.ParallelLookahead;
import org.pipwright.engine.search.Pruning;
import org.pipwright.engine.search.Searched;

/**
 * What candidate pruning loses at lookahead 2: how much worse the chosen play is than the best one, both as a search that prunes
 * hardly at all values them, and what each choice takes. Plays that search drops count as losing 0.1.
 */
final class PruningTable {
    private static final int LOOKAHEAD = 2;
    private static final double DROPPED = 0.1;
    private static final LookaheadSettings WIDE = settings(0.5f, 12, 0.3f, 8, 0.3f, 8);

    private final Supplier<Judgement> judgements;

    PruningTable(Supplier<Judgement> judgements) {
        this.judgements = judgements;
    }

    private static LookaheadSettings settings(
            float first, int firstMost, float then, int thenMost, float replies, int repliesMost) {
        return new LookaheadSettings(
                List.of(new Pruning(first, firstMost), new Pruning(then, thenMost)),
                List.of(new Pruning(replies, repliesMost)));
    }

    private static Map<String, LookaheadSettings> all() {
        Map<String, LookaheadSettings> all = new LinkedHashMap<>();
        all.put("0.50/12, 0.30/8; 0.30/8 (reference)", WIDE);
        all.put("0.24/12, 0.12/6; 0.16/4", settings(0.24f, 12, 0.12f, 6, 0.16f, 4));
        all.put("default", LookaheadSettings.DEFAULT);
        all.put("0.16/8, 0.08/4; 0.08/3", settings(0.16f, 8, 0.08f, 4, 0.08f, 3));
        all.put("0.16/8, 0.08/4; 0.04/2", settings(0.16f, 8, 0.08f, 4, 0.04f, 2));
        all.put("0.16/8, 0.08/4; 0.08/2", settings(0.16f, 8, 0.08f, 4, 0.08f, 2));
        all.put("0.16/8, 0.08/4; 0/1", settings(0.16f, 8, 0.08f, 4, 0, 1));
        all.put("0.10/5, 0.05/3; 0.08/3", settings(0.10f, 5, 0.05f, 3, 0.08f, 3));
        all.put("0.10/5, 0.05/3; 0.04/2", settings(0.10f, 5, 0.05f, 3, 0.04f, 2));
        return all;
    }

    /** Sums over the choices made with one setting. */
    private static final class Row {
        private double loss;
        private double seconds;
        private double most;
    }

    String of(List<Choice> choices) {
        Map<String, Row> rows = new LinkedHashMap<>();
        for (Choice choice : choices) {
            List<Searched> reference = List.of();
            for (Map.Entry<String, LookaheadSettings> entry : all().entrySet()) {
                Row row = rows.computeIfAbsent(entry.getKey(), key -> new Row());
                List<Searched> found = search(choice, entry.getValue(), row);
                reference = entry.getValue() == WIDE ? found : reference;
                row.loss += loss(found, reference);
            }
        }
        StringBuilder page = new StringBuilder(
                "| plays kept (at first, after lookahead 1; replies) | loss | mean s | most s |\n| --- | ---: | ---: | ---: |\n");
        rows.forEach((name, row) -> page.append(String.format(
                Locale.ROOT,
                "| %s | %.5f | %.4f | %.3f |%n",
                name,
                row.loss / choices.size(),
                row.seconds / choices.size(),
                row.most)));
        return page.toString();
    }

    private List<Searched> search(Choice choice, LookaheadSettings settings, Row row) {
        try (ParallelLookahead search = new ParallelLookahead(judgements, settings, 1)) {
            long began = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            List<Searched> found = search.search(choice, LOOKAHEAD);
            double took = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - began) / 1e9;
            row.seconds += took;
            row.most = Math.max(row.most, took);
            return found;
        }
    }

    private static double loss(List<Searched> found, List<Searched> reference) {
        Searched chosen = reference.get(best(found).result());
        return chosen.lookahead() < LOOKAHEAD
                ? DROPPED
                : best(reference).outcomes().equity() - chosen.outcomes().equity();
    }

    private static Searched best(List<Searched> lines) {
        Searched best = null;
        for (Searched line : lines) {
            boolean deep = line.lookahead() == LOOKAHEAD;
            if (deep
                    && (best == null
                            || line.outcomes().equity() > best.outcomes().equity())) {
                best = line;
            }
        }
        return best;
    }
}
