package org.pipwright.engine.rollout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.TermsByStakes;
import org.pipwright.engine.files.InvalidWorkFileException;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.RandomModels;

/** Files of rollouts with the cube; what makes any file unfit is tested by {@link RolloutFileTest}. */
class RolloutWithCubeFileTest {
    private static final Model MODEL = RandomModels.of(21, 16);
    private static final RolloutSettings SETTINGS =
            RolloutSettings.DEFAULT.withTrials(180).withTruncation(5);
    private static final Position POSITION = PositionText.parse("1@3 1@9 13@off / 2@5 13@off");
    private static final Position CLOSE = PositionText.parse("1@6 1@9 13@off / 2@5 13@off");
    private static final RolloutSettings UNTIL_SURE =
            RolloutSettings.DEFAULT.withTrials(7200).withTruncation(2).withSure(6);
    private static final CubeState CUBE = new CubeState(2, CubeOwner.ME);
    private static final List<Start> STARTS =
            List.of(Start.rolling(POSITION, CUBE), Start.rolling(POSITION, CUBE.taken()));
    private static final Stakes MATCH = new MatchStakes(new MatchScore(5, 3, false));

    @TempDir
    Path folder;

    private static CubeTerms terms(Stakes stakes) {
        return stakes instanceof MatchStakes
                ? new MatchTerms((MatchStakes) stakes, ShippedMatchTable.load())
                : new MoneyTerms((MoneyStakes) stakes, null);
    }

    private static RolloutReport compare(
            List<Start> starts,
            Stakes stakes,
            RolloutSettings settings,
            int threads,
            WorkFile file,
            RolloutListener listener) {
        try (Rollouts rollouts = new Rollouts(
                () -> Judgement.by(new NetworkEvaluator(MODEL)),
                () -> new TermsByStakes(RolloutWithCubeFileTest::terms),
                settings,
                threads)) {
            return rollouts.compare(starts, stakes, CUBE.value(), file, listener);
        }
    }

    private WorkFile fresh() {
        return Rollouts.FILES.fresh(folder.resolve("some.rollout"), List.of("net net"));
    }

    private WorkFile resumed() {
        return Rollouts.FILES.resumed(folder.resolve("some.rollout"), List.of("net net"));
    }

    /** Bit for bit, however many threads play each part, at a score and for money, in the midst of a round or after it. */
    @ParameterizedTest
    @CsvSource({"true, 1, 3", "true, 3, 2", "false, 2, 1"})
    void stoppedAndResumedGivesTheSameAsWithoutAStop(boolean match, int before, int after) {
        Stakes stakes = match ? MATCH : MoneyStakes.USUAL;
        List<RolloutReport> seen = new ArrayList<>();
        RolloutListener stopping = new RolloutListener() {
            @Override
            public boolean round(RolloutReport report) {
                return seen.add(report);
            }

            @Override
            public boolean stopped() {
                return seen.size() == 2;
            }
        };
        RolloutReport known = compare(STARTS, stakes, SETTINGS, before, fresh(), stopping);
        assertEquals(72, known.trials(), "whole rounds");
        int[] rounds = new int[1];
        RolloutReport whole = compare(STARTS, stakes, SETTINGS, after, resumed(), report -> ++rounds[0] > 0);
        assertEquals(3, rounds[0], "only what was missing is played");
        assertEquals(compare(STARTS, stakes, SETTINGS, 1, WorkFile.NONE, RolloutListener.NONE), whole);
        assertEquals(whole, compare(STARTS, stakes, SETTINGS, after, resumed(), report -> {
            throw new AssertionError("nothing is left to play");
        }));
        RolloutSettings more = SETTINGS.withTrials(216);
        assertEquals(
                compare(STARTS, stakes, more, 1, WorkFile.NONE, RolloutListener.NONE),
                compare(STARTS, stakes, more, after, resumed(), RolloutListener.NONE));
    }

    /** Games until the actions are clear: a stop and a file change neither when that is nor what is said then. */
    @ParameterizedTest
    @CsvSource({"5, 3", "4, 4"})
    void stoppedBeforeItIsSureItGoesOnUntilItIs(int mine, int theirs) {
        Stakes stakes = new MatchStakes(new MatchScore(mine, theirs, false));
        RolloutReport whole = actions(stakes, 1, WorkFile.NONE, RolloutListener.NONE);
        assertTrue(whole.clear() && whole.trials() > 36 && whole.trials() < UNTIL_SURE.trials(), whole::toString);
        assertEquals(36, actions(stakes, 2, fresh(), report -> false).trials());
        assertEquals(whole, actions(stakes, 2, resumed(), RolloutListener.NONE));
        assertEquals(whole, actions(stakes, 1, resumed(), report -> {
            throw new AssertionError("it was sure already");
        }));
    }

    private static RolloutReport actions(Stakes stakes, int threads, WorkFile file, RolloutListener listener) {
        try (Rollouts rollouts = new Rollouts(
                () -> Judgement.by(new NetworkEvaluator(MODEL)),
                () -> new TermsByStakes(RolloutWithCubeFileTest::terms),
                UNTIL_SURE,
                threads)) {
            return rollouts.actions(CLOSE, CUBE, stakes, file, listener);
        }
    }

    @Test
    void playsAreResumedToo() {
        List<Start> plays = new ArrayList<>();
        Plays.legal(POSITION, Roll.of(2, 1)).forEach(play -> plays.add(Start.after(play, CUBE)));
        compare(plays, MATCH, SETTINGS, 2, fresh(), report -> false);
        assertEquals(
                compare(plays, MATCH, SETTINGS, 1, WorkFile.NONE, RolloutListener.NONE),
                compare(plays, MATCH, SETTINGS, 2, resumed(), RolloutListener.NONE));
    }

    private void assertRefused(List<Start> starts, Stakes stakes, RolloutSettings settings, String why) {
        InvalidWorkFileException thrown = assertThrows(
                InvalidWorkFileException.class,
                () -> compare(starts, stakes, settings, 1, resumed(), RolloutListener.NONE));
        assertTrue(thrown.getMessage().contains(why), thrown.getMessage());
    }

    @Test
    void anotherRolloutIsRefusedAndTheMessageSaysWhatDiffers() {
        compare(STARTS, MoneyStakes.USUAL, SETTINGS.withTrials(36), 1, fresh(), RolloutListener.NONE);
        assertRefused(STARTS, MoneyStakes.USUAL, SETTINGS.withSeed(2), "'seed 1' where 'seed 2'");
        assertRefused(STARTS, MoneyStakes.USUAL, SETTINGS.withLookahead(1), "'lookahead 0' where 'lookahead 1'");
        String money = "'money, jacoby true, beavers false' where ";
        assertRefused(STARTS, MATCH, SETTINGS, money + "'match 5,3, crawford false'");
        assertRefused(STARTS, new MoneyStakes(false, false), SETTINGS, money + "'money, jacoby false, beavers false'");
        assertRefused(STARTS.subList(0, 1), MoneyStakes.USUAL, SETTINGS, "where 'nothing more'");
        List<Start> owned = List.of(Start.rolling(POSITION, CUBE.swapped()), STARTS.get(1));
        assertRefused(owned, MoneyStakes.USUAL, SETTINGS, "cube 2 ME, rolling' where ");
    }

    /** The same net, seed and position, but another kind of rollout. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aFileOfTheOtherKindIsRefused(boolean cubeful) {
        RolloutSettings settings = SETTINGS.withTrials(36);
        try (Rollouts cubeless = new Rollouts(() -> Judgement.by(new NetworkEvaluator(MODEL)), settings, 1)) {
            if (cubeful) {
                compare(STARTS, MoneyStakes.USUAL, settings, 1, fresh(), RolloutListener.NONE);
                assertThrows(
                        InvalidWorkFileException.class, () -> cubeless.odds(POSITION, resumed(), RolloutListener.NONE));
            } else {
                cubeless.odds(POSITION, fresh(), RolloutListener.NONE);
                assertRefused(STARTS, MoneyStakes.USUAL, settings, "'before ");
            }
        }
    }

    @Test
    void aForgedFileIsRefused() throws IOException {
        compare(STARTS, MATCH, SETTINGS.withTrials(36), 1, fresh(), RolloutListener.NONE);
        Path file = folder.resolve("some.rollout");
        Files.writeString(file, Files.readString(file).replace("trials 36", "trials 72"));
        assertRefused(STARTS, MATCH, SETTINGS, "its checksum is wrong");
    }
}
