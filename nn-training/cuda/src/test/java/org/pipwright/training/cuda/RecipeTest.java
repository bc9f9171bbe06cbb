package org.pipwright.training.cuda;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.pipwright.training.settings.InvalidSettingsException;

/** Settings of a run on a card, and what they make of it. */
class RecipeTest {
    @ParameterizedTest
    @EnumSource
    void presetsAreRecipes(CardPreset preset) {
        Recipe recipe = Recipe.of(preset.settings());
        assertTrue(recipe.minutes() > 0 && recipe.shapes().size() >= 2);
        assertEquals(preset, CardPreset.named(preset.words(), preset.device()));
        assertEquals(preset.settings(), CardPreset.parse(preset.settings().toText()));
    }

    @Test
    void theMeasuredRecipe() {
        Recipe recipe = Recipe.of(CardPreset.DEEP.settings());
        assertEquals(
                List.of("1024x6", "quick-256x1", "768x4", "256x2"),
                List.of(recipe.name(0), recipe.name(1), recipe.name(2), recipe.name(3)));
        assertEquals(new LearnerSettings(8192, 0.9f, 0.99f, 0.01f, 1, 0.999f), recipe.learner());
        assertEquals(new GameRules(0.08, 0.15, 8, 0, 60, 0.08f, 2000), recipe.rules());
        assertEquals(List.of(0, 1, 2, 3), recipe.learning());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "games = 8192 | say how long to train",
                "minutes = 1; batch = 100 | batch must be a multiple of 64, not '100'",
                "minutes = 1; deep.rows = 300 | deep.rows must be a multiple of 256",
                "minutes = 1; deep = 100x1 | deep must be width x blocks, such as 1024x6, not '100x1'",
                "minutes = 1; pupils = 128x1,128x1 | pupils must be different shapes",
                "minutes = 1; pupils = 128x1; start.pupils = a,b | start.pupils names 2 files for 1 pupils",
                "minutes = 1; teach.only = yes | teach.only = yes needs start.deep, start.quick and pupils",
                "minute = 1 | there is no setting 'minute': train --device cuda --print-settings lists them"
            })
    void nonsenseIsRefused(String text, String expected) {
        InvalidSettingsException e = assertThrows(
                InvalidSettingsException.class, () -> Recipe.of(CardPreset.parse(text.replace(';', '\n'))));
        assertTrue(e.getMessage().contains(expected), e.getMessage());
    }

    @Test
    void rateAndLambdaFall() {
        Recipe recipe = Recipe.of(CardPreset.parse("minutes = 1\n"));
        long[] nanos = {0};
        RunClock clock = new RunClock(() -> nanos[0], 20);
        Schedule schedule = new Schedule(recipe, clock, Double.NaN);
        nanos[0] = 10_000_000_000L;
        assertEquals(0, schedule.progress());
        schedule.begin();
        assertEquals(30, schedule.began(), 1e-9);
        nanos[0] = 25_000_000_000L;
        assertEquals(0.5, schedule.progress(), 1e-9);
        assertEquals(0.0005, schedule.rate(), 1e-9);
        assertEquals(0.575, schedule.lambda(), 1e-6);
        nanos[0] = 50_000_000_000L;
        assertEquals(1, schedule.progress());
        assertEquals(0, schedule.rate(), 1e-9);
    }

    /** Only time spent training counts: hours between a stop and the next start are no part of a run. */
    @Test
    void pausesDontCount() {
        Recipe recipe = Recipe.of(CardPreset.parse("minutes = 1\n"));
        long[] nanos = {0};
        RunClock first = new RunClock(() -> nanos[0], 0);
        nanos[0] = 30_000_000_000L;
        assertEquals(0.5, new Schedule(recipe, first, 0).progress(), 1e-9);
        double stopped = first.seconds();
        nanos[0] += 3_600_000_000_000L;
        RunClock second = new RunClock(() -> nanos[0], stopped);
        assertEquals(0.5, new Schedule(recipe, second, 0).progress(), 1e-9);
        nanos[0] += 15_000_000_000L;
        assertEquals(0.75, new Schedule(recipe, second, 0).progress(), 1e-9);
    }

    /** A run that goes on has the seeds that the run would have had. */
    @Test
    void seedsGoOnWhereTheyStood() {
        SplittableRandom random = new SplittableRandom(9);
        Seeds seeds = new Seeds(9, 0);
        for (int i = 0; i < 20; i++) {
            assertEquals(random.nextLong(), seeds.next());
        }
        assertEquals(seeds.next(), new Seeds(9, 20).next());
    }
}
