package org.pipwright.engine.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubelessStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.features.FeatureSet;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.network.RandomNetworks;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.play.RandomWalk;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** What is kept of a question's positions, against searches that have kept nothing. */
class ExpansionsTest {
    private static final Model MODEL = new Model(RandomNetworks.residual(FeatureSet.PLACES_1, 5, 32, 1), Map.of())
            .withQuick(RandomModels.of(21, 16).net());

    private final PlayGenerator generator = new PlayGenerator();

    private static ParallelLookahead search(int threads) {
        return new ParallelLookahead(
                () -> Judgement.by(new NetworkEvaluator(MODEL)),
                () -> stakes -> new MoneyTerms((MoneyStakes) stakes, null),
                LookaheadSettings.DEFAULT,
                threads,
                ParallelLookahead.memory(),
                () -> false);
    }

    private Choice choice(Position position, Roll roll, Stakes stakes) {
        int count = generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
        return new Choice(position.toPlanes(), generator.results(), count, stakes, CubeState.START);
    }

    @Test
    void everyRollIsInOnePart() {
        for (int positions = 1; positions < 10; positions++) {
            for (int threads = 1; threads < 40; threads++) {
                int parts = Expansion.parts(positions, threads);
                assertTrue(parts == Roll.COUNT || positions * parts >= threads, positions + " for " + threads);
                Expansion expansion = new Expansion(
                        IntStream.range(0, parts).mapToObj(i -> new Replies()).toList());
                for (int part = 0; part < parts; part++) {
                    for (int roll = expansion.first(part); roll < expansion.first(part + 1); roll++) {
                        assertEquals(expansion.parts().get(part), expansion.of(roll));
                    }
                }
                assertEquals(0, expansion.first(0));
                assertEquals(Roll.COUNT, expansion.first(parts));
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"1, false", "2, true", "5, false", "5, true"})
    void repliesAfterAQuestionAreThoseOfAnotherSearch(int threads, boolean money) {
        Stakes stakes = money ? MoneyStakes.USUAL : new CubelessStakes();
        RandomWalk walk = new RandomWalk(15, 91);
        try (ParallelLookahead search = search(threads)) {
            for (int i = 0; i < 3; i++) {
                Position position = walk.next();
                Roll roll = walk.roll();
                search.search(choice(position, roll, stakes), 2);
                for (Play play : Plays.legal(position, roll)) {
                    if (!play.next().finished()) {
                        compare(play.next(), search);
                    }
                }
            }
        }
    }

    private static void compare(Position position, ParallelLookahead search) {
        try (ParallelLookahead fresh = search(1)) {
            assertEquals(fresh.replies(position, 0), search.replies(position, 0));
            assertEquals(fresh.replies(position, 1), search.replies(position, 1));
        }
    }

    @Test
    void repliesThatHitNothingAreTheSameOneRollAtATime() {
        int hitting = 0;
        try (ParallelLookahead search = search(2)) {
            for (Position position : new RandomWalk(15, 93).next(40)) {
                List<Optional<Outcomes>> together = search.quietReplies(position, Roll.all());
                List<Optional<Outcomes>> alone = new ArrayList<>();
                for (Roll roll : Roll.all()) {
                    alone.addAll(search.quietReplies(position, List.of(roll)));
                    boolean quiet = Plays.legal(position, roll).stream()
                            .anyMatch(play -> barOfOther(play.result()) == barOfOther(position));
                    assertEquals(quiet, alone.get(roll.index()).isPresent());
                    hitting += quiet ? 0 : 1;
                }
                assertEquals(alone, together);
            }
        }
        assertTrue(hitting > 5, "rolls of which every play hits: " + hitting);
    }

    private static int barOfOther(Position position) {
        return Planes.count(position.toPlanes(), Planes.SIDE, Planes.BAR);
    }
}
