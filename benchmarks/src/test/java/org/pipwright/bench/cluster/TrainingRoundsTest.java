package org.pipwright.bench.cluster;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.parallel.Post;
import org.pipwright.models.ModelCatalog;

/** What is measured of training rounds. */
class TrainingRoundsTest {
    @Test
    void othersMakeTheSameNetAndAreCounted() {
        Model start = ModelCatalog.shipped().load("fifth");
        TrainingRounds rounds = new TrainingRounds(start, 2, 1);
        TrainingRounds.Measured here = rounds.run(1, null);
        Metered metered = new Metered(new Post());
        TrainingRounds.Measured there = rounds.run(1, metered);
        assertArrayEquals(here.net(), there.net());
        assertTrue(metered.secondsOfLast(1) < there.seconds());
        // Of one round: the net, and some 50 positions of 56 bytes of each of two games.
        long net = ModelFile.toBytes(start).length;
        assertTrue(metered.sharedBytes > 0.9 * net && metered.sharedBytes < 1.1 * net, "shared " + metered.sharedBytes);
        assertTrue(metered.resultBytes > 2_000 && metered.resultBytes < 20_000, "results " + metered.resultBytes);
    }
}
