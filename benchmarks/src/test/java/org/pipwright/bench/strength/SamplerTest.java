package org.pipwright.bench.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayRanker;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.models.ModelCatalog;

/** Drawing decisions, on a small scale. */
class SamplerTest {
    private static final int EACH = 6;

    private static Model model;
    private static List<Decision> decisions;

    @BeforeAll
    static void sample() {
        model = ModelCatalog.shipped().load("fifth");
        decisions = sampler(5).sample(2000);
    }

    private static Sampler sampler(long seed) {
        List<Entrant> entrants = List.of(
                Entrant.ofModel("net", model, 0),
                Baselines.named("builder").orElseThrow(),
                Baselines.named("hitter").orElseThrow());
        return new Sampler(entrants, new Judge(Knowledge.of(model), 1), seed, EACH);
    }

    @Test
    void everyRegimeHasItsShare() {
        Map<Regime, Long> counts =
                decisions.stream().collect(Collectors.groupingBy(Decision::regime, Collectors.counting()));

        assertEquals(Regime.values().length, counts.size());
        assertTrue(counts.values().stream().allMatch(count -> count == EACH), counts::toString);
        decisions.forEach(decision -> assertEquals(decision.regime(), Regime.of(decision.board())));
    }

    @Test
    void decisionsAreDistinctAndNumbered() {
        Set<String> distinct = new HashSet<>();
        for (int i = 0; i < decisions.size(); i++) {
            assertEquals(i + 1, decisions.get(i).id());
            distinct.add(decisions.get(i).position() + decisions.get(i).roll());
        }
        assertEquals(decisions.size(), distinct.size());
    }

    @Test
    void thereIsMoreThanOneSensiblePlay() {
        PlayRanker ranker = new PlayRanker(new NetworkEvaluator(model));
        for (Decision decision : decisions) {
            double second =
                    ranker.rank(decision.board(), decision.dice()).get(1).cost();
            assertTrue(second >= -Sampler.WITHIN, decision + " " + second);
        }
    }

    @Test
    void severalPlayersAreDrawnFrom() {
        Set<String> onRoll = decisions.stream()
                .map(decision -> decision.game().split(" v ")[0])
                .collect(Collectors.toSet());

        assertEquals(Set.of("net", "builder", "hitter"), onRoll);
    }

    @Test
    void theSameSeedGivesTheSameDecisions() {
        assertEquals(decisions, sampler(5).sample(2000));
        assertNotEquals(decisions, sampler(6).sample(2000));
    }

    @Test
    void tooFewGamesAreAnError() {
        Sampler sampler = sampler(5);

        assertThrows(IllegalArgumentException.class, () -> sampler.sample(3));
    }

    /** What is not wanted is passed over, the rest stays the same. */
    @Test
    void onlyWantedDecisionsAreTaken() {
        List<Entrant> entrants = List.of(
                Entrant.ofModel("net", model, 0),
                Baselines.named("builder").orElseThrow(),
                Baselines.named("hitter").orElseThrow());
        List<Decision> doubles = new Sampler(
                        entrants, new Judge(Knowledge.of(model), 1), 5, 1, (position, roll) -> roll.isDouble())
                .sample(2000);
        assertEquals(Regime.values().length, doubles.size());
        assertTrue(doubles.stream().allMatch(decision -> decision.dice().isDouble()), doubles::toString);
    }
}
