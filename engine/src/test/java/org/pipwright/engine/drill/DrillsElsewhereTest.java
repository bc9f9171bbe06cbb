package org.pipwright.engine.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.parallel.Post;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RandomRecords;
import org.pipwright.engine.review.ReviewSettings;
import org.pipwright.engine.review.Reviews;
import org.pipwright.engine.search.RandomModels;

/** Exercises looked for by other machines are those that are found here. */
class DrillsElsewhereTest {
    private static final Model MODEL = RandomModels.of(3, 6);
    private static final Knowledge KNOWLEDGE = Knowledge.of(MODEL);
    private static final Clarity CLARITY = new Clarity(0.02, 0.01, 0, false);

    private static Drill drill(Theme theme, Entrant weaker, List<String> told) {
        DrillSettings settings = new DrillSettings(theme, 3, 1, CLARITY, 3, 40);
        return new Drill(settings, KNOWLEDGE, weaker, (found, games) -> told.add(found + " of " + games));
    }

    private static List<Exercise> assertSame(Theme theme, Entrant weaker) {
        List<String> here = new ArrayList<>();
        List<String> there = new ArrayList<>();
        List<Exercise> found = drill(theme, weaker, here).run(2);
        assertEquals(found, drill(theme, weaker, there).run(new Post()));
        assertEquals(here, there);
        return found;
    }

    @ParameterizedTest
    @EnumSource(
            value = Theme.class,
            names = {"OPENING", "HITTING", "TAKES_AND_PASSES"})
    void ofGames(Theme theme) {
        assertFalse(assertSame(theme, Baselines.named("racer").orElseThrow()).isEmpty());
        assertSame(theme, Entrant.ofModel("other", RandomModels.of(4, 6), 0));
    }

    @Test
    void ofDecisions() {
        GameRecord record = new RandomRecords(1).next();
        Mistakes mistakes = new Mistakes(CLARITY.cost(), player -> true);
        mistakes.add(
                "a record",
                new Reviews(KNOWLEDGE, new ReviewSettings(0, 0, 1, false), 2)
                        .review(record, WorkFile.NONE, Progress.NONE));
        List<Candidate> candidates = mistakes.costliestFirst();
        for (int count : new int[] {4, 1000}) {
            SelectionSettings settings = new SelectionSettings(Optional.empty(), count, CLARITY, true, 3);
            List<Exercise> found = new Selection(settings, KNOWLEDGE, (exercises, of) -> {}).run(candidates, 2);
            assertTrue(found.size() > 3);
            assertEquals(found, new Selection(settings, KNOWLEDGE, (exercises, of) -> {}).run(candidates, new Post()));
        }
    }
}
