package org.pipwright.bench.games;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.roll.Roll;
import org.pipwright.models.ModelCatalog;

class SelfGamesTest {
    private static final Model MODEL = ModelCatalog.shipped().load("fifth");

    /** First roll, number of rolls and outcome of games. */
    private static List<String> games(int count, int lookahead, long seed, int threads) {
        List<String> games = new ArrayList<>();
        try (SelfGames play = new SelfGames(Knowledge.of(MODEL)::judgement, lookahead, seed, threads)) {
            play.<String>play(
                    (player, dice, choices) -> {
                        Roll[] first = {null};
                        float[] out = new float[Outcomes.COUNT];
                        player.play(
                                dice,
                                (planes, roll, legal, chosen) -> first[0] = first[0] == null ? roll : first[0],
                                out);
                        assertEquals(1, Math.abs(Outcomes.of(out, 0).equity()), 2);
                        return first[0] + " " + player.turns() + " " + Outcomes.of(out, 0);
                    },
                    game -> games.add(game) && games.size() < count);
        }
        return games;
    }

    @Test
    void gamesComeInOrderWhateverTheThreads() {
        List<String> games = games(300, 0, 4, 1);
        assertEquals(300, games.size());
        assertEquals(games, games(300, 0, 4, 2));
        assertNotEquals(games, games(300, 0, 5, 2));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1})
    void noGameOpensWithADouble(int lookahead) {
        for (String game : games(lookahead == 0 ? 100 : 1, lookahead, 1, 1)) {
            assertNotEquals(game.charAt(0), game.charAt(2), game);
        }
    }
}
