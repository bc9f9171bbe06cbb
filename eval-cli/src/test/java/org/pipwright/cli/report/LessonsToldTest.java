package org.pipwright.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.pipwright.engine.drill.Clarity;
import org.pipwright.engine.drill.Drill;
import org.pipwright.engine.drill.DrillSettings;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.PlayExercise;
import org.pipwright.engine.drill.Theme;
import org.pipwright.engine.duel.Baselines;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.explain.Motive;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.models.ModelCatalog;

/** Exercises are chosen by the reason that a student is told: 150 of them, of all themes about plays. */
class LessonsToldTest {
    private static final int EACH = 25;

    @ParameterizedTest
    @EnumSource(names = {"OPENING", "HITTING", "PRIMING", "ESCAPING", "BEARING_IN", "BEARING_OFF"})
    void theFirstSentenceIsAboutTheTheme(Theme theme) {
        Knowledge knowledge = Knowledge.of(ModelCatalog.shipped().load("fifth"));
        DrillSettings settings =
                new DrillSettings(theme, EACH, 5, new Clarity(0.04, 0.02, 0, false), 4, 20_000, Sentences.ALL);
        List<Exercise> found = new Drill(
                        settings, knowledge, Baselines.named("builder").orElseThrow(), (exercises, games) -> {})
                .run(2);
        assertEquals(EACH, found.size());
        try (Judge judge = new Judge(knowledge, 1)) {
            Reasoning reasoning = new Reasoning(judge, 0, false, knowledge.terms());
            for (Exercise each : found) {
                PlayExercise exercise = (PlayExercise) each;
                Explanation why =
                        Explanation.of(exercise.position(), List.of(exercise.best(), exercise.weak()), judge, 0);
                List<Motive> leads = RivalWords.leads(why.best(), why.rivals().get(0), why.gammons());
                assertTrue(leads.stream().anyMatch(theme::about), () -> exercise + ": " + leads);
                Reasons told = reasoning.of(exercise, theme::about);
                assertTrue(told.weak().get(0).startsWith("Mainly because "), told::toString);
                assertEquals(LessonWords.ofPlay(leads, theme::about), told.lesson());
            }
        }
    }
}
