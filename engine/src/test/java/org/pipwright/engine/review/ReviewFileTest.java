package org.pipwright.engine.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.files.InvalidWorkFileException;
import org.pipwright.engine.files.SealedLines;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RandomRecords;

class ReviewFileTest {
    private static final ReviewSettings SETTINGS = new ReviewSettings(1, 0, 1, true);

    @TempDir
    private Path folder;

    private static final GameRecord RECORD = Beginnings.of(new RandomRecords(41).next(), 16);

    /** Stops after some turns. */
    private static final class Stopper implements Progress {
        private final int after;
        private final AtomicInteger done = new AtomicInteger();

        Stopper(int after) {
            this.after = after;
        }

        @Override
        public void reached(int turns, int all) {
            done.incrementAndGet();
        }

        @Override
        public boolean stopped() {
            return done.get() >= after;
        }
    }

    private Path stopped(int after, int threads) {
        Path file = folder.resolve("kept");
        Reviews reviews = Setting.reviews(SETTINGS, threads);
        WorkFile fresh = Reviews.FILES.fresh(file, Setting.JUDGE);
        assertThrows(CancellationException.class, () -> reviews.review(RECORD, fresh, new Stopper(after)));
        return file;
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3})
    void threadsChangeNothing(int threads) {
        assertEquals(
                Setting.review(RECORD, 1),
                Setting.reviews(SETTINGS, threads).review(RECORD, WorkFile.NONE, Progress.NONE));
    }

    @ParameterizedTest
    @CsvSource({"1, 1", "7, 1", "9, 2"})
    void aStopAndAResumeChangeNothing(int after, int threads) {
        Path file = stopped(after, threads);
        int[] first = {0};
        Review resumed = Setting.reviews(SETTINGS, threads)
                .review(
                        RECORD,
                        Reviews.FILES.resumed(file, Setting.JUDGE),
                        (done, all) -> first[0] = first[0] == 0 ? done : first[0]);
        assertEquals(Setting.review(RECORD, 1), resumed);
        assertTrue(first[0] > after, "began with turn " + first[0]);
    }

    @Test
    void aFinishedReviewIsReadBackWhole() {
        Path file = folder.resolve("kept");
        Reviews reviews = Setting.reviews(SETTINGS, 1);
        Review whole = reviews.review(RECORD, Reviews.FILES.fresh(file, Setting.JUDGE), Progress.NONE);
        Review again = reviews.review(RECORD, Reviews.FILES.resumed(file, Setting.JUDGE), (done, all) -> {
            throw new AssertionError("nothing is left to do");
        });
        assertEquals(whole, again);
    }

    /** Version 1 said nothing of what values rest on: turns that may be races are judged anew, all others read. */
    @Test
    void filesOfVersion1AreRead() throws IOException {
        GameRecord record = new RandomRecords(7).next();
        Path file = folder.resolve("kept");
        Reviews reviews = Setting.reviews(new ReviewSettings(0, 0, 1, true), 1);
        Review whole = reviews.review(record, Reviews.FILES.fresh(file, Setting.JUDGE), Progress.NONE);
        List<String> lines =
                SealedLines.parse("pipwright-review 2", Files.readString(file)).orElseThrow();
        Files.writeString(
                file,
                SealedLines.print(
                        "pipwright-review 1",
                        lines.stream().map(ReviewFileTest::version1).toList()));
        int[] anew = {0};
        Review again = reviews.review(record, Reviews.FILES.resumed(file, Setting.JUDGE), (done, all) -> anew[0]++);
        assertEquals(whole, again);
        long races = whole.turns().stream().filter(ReviewFileTest::mayBeRace).count();
        assertTrue(
                races > 0 && races < whole.turns().size(),
                races + " of " + whole.turns().size());
        assertEquals(races, anew[0]);
    }

    private static boolean mayBeRace(ReviewedTurn turn) {
        return !turn.moment().position().contact()
                || turn.finding().options().stream()
                        .anyMatch(option -> !option.play().next().contact());
    }

    /** A line as it was then: without the bases, and without the lookahead of the chances behind the error. */
    private static String version1(String line) {
        String[] fields = line.split("\t", -1);
        if (!fields[0].startsWith("turn ")) {
            return line;
        }
        List<String> then = new ArrayList<>(List.of(fields).subList(0, 4));
        for (int at = 5; at < fields.length; at += 5) {
            then.addAll(List.of(fields).subList(at, at + 3));
            then.add(fields[at + 3].substring(0, fields[at + 3].lastIndexOf(' ')));
        }
        return String.join("\t", then);
    }

    private String refusal(Path file, GameRecord record, ReviewSettings settings, List<String> judge) {
        WorkFile resumed = Reviews.FILES.resumed(file, judge);
        return assertThrows(InvalidWorkFileException.class, () -> Setting.reviews(settings, 1)
                        .review(record, resumed, Progress.NONE))
                .getMessage();
    }

    @Test
    void anotherReviewsFileIsRefused() {
        Path file = stopped(3, 1);
        assertTrue(refusal(file, RECORD, new ReviewSettings(0, 0, 1, true), Setting.JUDGE)
                .endsWith(
                        "belongs to another review: it has 'lookahead 1' where 'lookahead 0' is asked for; ask for the"
                                + " same, or begin anew with --save"));
        assertTrue(refusal(file, RECORD, SETTINGS, List.of("net other", "table shipped"))
                .contains("'net test' where 'net other'"));
        GameRecord other = Beginnings.of(new RandomRecords(41).next(), 15);
        assertTrue(refusal(file, other, SETTINGS, Setting.JUDGE).contains("it has 'record "));
    }

    /** Every byte flipped, every length cut: never a wrong review, never another error. */
    @Test
    void damageIsFound() throws IOException {
        Path file = stopped(2, 1);
        byte[] whole = Files.readAllBytes(file);
        for (int at = 0; at < whole.length; at += 31) {
            byte[] flipped = whole.clone();
            flipped[at] ^= 1;
            Files.write(file, flipped);
            assertTrue(refusal(file, RECORD, SETTINGS, Setting.JUDGE).contains("is not a whole review file"));
            Files.write(file, Arrays.copyOf(whole, at));
            assertTrue(refusal(file, RECORD, SETTINGS, Setting.JUDGE).contains("is not a whole review file"));
        }
    }

    /** Lines with a right seal that make no sense. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "turn 99999\t",
                "turn -1\t",
                "turn x\t",
                "turn something",
                "turn 0\t",
                "turn 0\t1 0 0 0 0 0\t-\t-",
                "turn 0\t1 0 0 0 0 0\t-\t0.5\tESTIMATED\t8/5 6/5\t0\t1 0 0 0 0 0\t0 0\tESTIMATED",
                "turn 0\t1 0 0 0 0 0\t-\t0.5\tGUESSED",
                "turn 0\tNaN 0 0 0 0 0\t-\t0.5"
            })
    void sealedNonsenseIsFound(String line) throws IOException {
        Path file = folder.resolve("kept");
        List<String> lines = new ArrayList<>(Setting.JUDGE);
        lines.addAll(FindingLines.task(RECORD, SETTINGS));
        lines.add(line);
        for (String form : List.of("pipwright-review 1", "pipwright-review 2")) {
            Files.writeString(file, SealedLines.print(form, lines));
            assertTrue(refusal(file, RECORD, SETTINGS, Setting.JUDGE).contains("belongs to no turn"));
        }
    }

    /** Whoever stops a review does not wait for the turn to be done: with lookahead 3 that could be hours. */
    @Test
    void aStopComesWithinATurn() {
        AtomicInteger asked = new AtomicInteger();
        Progress listener = new Progress() {
            @Override
            public void reached(int done, int all) {
                throw new AssertionError("no turn is that quick");
            }

            @Override
            public boolean stopped() {
                return asked.incrementAndGet() > 1000;
            }
        };
        Reviews reviews = Setting.reviews(new ReviewSettings(3, 0, 1, true), 1);
        assertThrows(CancellationException.class, () -> reviews.review(RECORD, WorkFile.NONE, listener));
        assertEquals(1001, asked.get());
    }

    @Test
    void gamesArePlayedOutWhereADecisionCosts() {
        GameRecord record = Beginnings.of(new RandomRecords(43).next(), 4);
        ReviewSettings settings = new ReviewSettings(0, 36, 5, true);
        Review one = Setting.reviews(settings, 1).review(record, WorkFile.NONE, Progress.NONE);
        assertEquals(one, Setting.reviews(settings, 2).review(record, WorkFile.NONE, Progress.NONE));
        Review plain = Setting.review(record, 0);
        int played = 0;
        for (int i = 0; i < plain.turns().size(); i++) {
            boolean costly = plain.turns().get(i).decisions().stream()
                    .anyMatch(decision -> decision.kind() == Decision.Kind.PLAY && decision.points() <= -0.010);
            int games = one.turns().get(i).finding().options().get(0).depth().games();
            assertEquals(costly ? 36 : 0, games);
            played += games > 0 ? 1 : 0;
        }
        assertTrue(played > 0);
    }
}
