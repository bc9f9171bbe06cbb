package org.pipwright.bench.strength;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.models.ModelCatalog;

class RolloutChooserTest {
    private static final Model MODEL = ModelCatalog.shipped().load("fifth");

    private static final RolloutSettings SETTINGS =
            RolloutSettings.DEFAULT.withTrials(36).withTruncation(3);

    private static RolloutChooser chooser(RolloutSettings settings, int threads) {
        return new RolloutChooser(Knowledge.of(MODEL), settings, threads);
    }

    /** Nobody doubts the 5 point: it needs no rollout. */
    @Test
    void aPlayThatStandsAloneIsPlayed() {
        try (RolloutChooser chooser = chooser(SETTINGS, 1)) {
            Play point = PlayText.parse("8/5 6/5", Position.start(), Roll.of(3, 1));
            assertEquals(List.of(point), chooser.candidates(Position.start(), Roll.of(3, 1)));
            assertEquals(point.result(), chooser.choose(Position.start(), Roll.of(3, 1)));
        }
    }

    @Test
    void closePlaysAreRolledOut() {
        Roll roll = Roll.of(4, 3);
        Position chosen;
        List<Play> candidates;
        try (RolloutChooser chooser = chooser(SETTINGS, 2);
                Judge judge = new Judge(Knowledge.of(MODEL), 1)) {
            chosen = chooser.choose(Position.start(), roll);
            candidates = chooser.candidates(Position.start(), roll);
            List<PlayVerdict> ranking = judge.ask(Question.of(Position.start(), roll), Effort.lookahead(1))
                    .plays();
            assertTrue(candidates.size() > 1 && candidates.size() <= 4, candidates::toString);
            for (int i = 0; i < candidates.size(); i++) {
                assertEquals(ranking.get(i).play(), candidates.get(i));
                assertTrue(ranking.get(i).cost() >= -0.08f);
            }
        }
        RolloutSettings dice = SETTINGS.withSeed((1L << 40) + 1);
        try (Rollouts rollouts = new Rollouts(Knowledge.of(MODEL)::judgement, dice, 1)) {
            int best = rollouts.compare(Position.start(), roll, candidates, RolloutListener.NONE)
                    .lines()
                    .get(0)
                    .candidate();
            assertEquals(candidates.get(best).result(), chosen);
        }
    }

    /**
     * Last rolls, counted by hand: the opponent is off in two rolls, or one with a double, so what counts is the chance to
     * be off in one. 31 of 36 rolls take off a checker on 5, 29 both from 4 and 1, 25 both from 3 and 2.
     */
    @ParameterizedTest
    @CsvSource({"1@5 1@3 / 4@1, 2-1, 3/off", "1@6 1@2 / 4@1, 2-1, 6/5 2/off"})
    void lastRollsArePlayedRight(String position, String roll, String best) {
        Position board = PositionText.parse(position);
        Roll dice = Roll.parse(roll);
        try (RolloutChooser chooser = chooser(RolloutSettings.DEFAULT.withTrials(216), 1)) {
            assertEquals(PlayText.parse(best, board, dice).result(), chooser.choose(board, dice));
        }
    }
}
