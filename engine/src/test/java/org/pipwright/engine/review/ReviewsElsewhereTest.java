package org.pipwright.engine.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.parallel.Post;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RandomRecords;
import org.pipwright.engine.search.RandomModels;

/** Records reviewed by other machines have the reviews they have here, bit for bit. */
class ReviewsElsewhereTest {
    private static final Knowledge KNOWLEDGE = Knowledge.of(RandomModels.of(3, 6));
    private static final ReviewSettings STATIC = new ReviewSettings(0, 0, 1, false);

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void findingsAreTheSame(long seed) {
        GameRecord record = new RandomRecords(seed).next();
        assertEquals(
                new Reviews(KNOWLEDGE, STATIC, 2).review(record, WorkFile.NONE, Progress.NONE),
                new Reviews(KNOWLEDGE, STATIC, new Post()).review(record, WorkFile.NONE, Progress.NONE));
    }

    @Test
    void alsoThoseOfGames() {
        GameRecord record = Setting.record("match: 3", "game", "Ada 3-1: 13/9", "Ben 6-2: 13/5", "Ada 4-2: 24/18");
        ReviewSettings games = new ReviewSettings(0, 36, 1, false);
        assertEquals(
                new Reviews(KNOWLEDGE, games, 1).review(record, WorkFile.NONE, Progress.NONE),
                new Reviews(KNOWLEDGE, games, new Post()).review(record, WorkFile.NONE, Progress.NONE));
    }

    /** What is kept elsewhere is gone on with here. */
    @Test
    void aStoppedReviewIsGoneOnWith() {
        GameRecord record = new RandomRecords(1).next();
        Path file = folder.resolve("kept.review");
        int[] done = {0};
        Progress stopping = new Progress() {
            @Override
            public void reached(int turns, int all) {
                done[0] = turns;
            }

            @Override
            public boolean stopped() {
                return done[0] > 5;
            }
        };
        Reviews there = new Reviews(KNOWLEDGE, STATIC, new Post());
        assertThrows(
                CancellationException.class,
                () -> there.review(record, Reviews.FILES.fresh(file, Setting.JUDGE), stopping));
        int[] first = {0};
        Review review = new Reviews(KNOWLEDGE, STATIC, 1)
                .review(
                        record,
                        Reviews.FILES.resumed(file, Setting.JUDGE),
                        (turns, all) -> first[0] += first[0] == 0 ? turns : 0);
        assertTrue(first[0] > 5, first[0] + " is the first turn that was looked at again");
        assertEquals(new Reviews(KNOWLEDGE, STATIC, 1).review(record, WorkFile.NONE, Progress.NONE), review);
    }
}
