package org.pipwright.cli.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.drill.Theme;
import org.pipwright.engine.explain.Motive;

/** What can be chosen to practise, and what the lessons of the exercises are about. */
class PracticeSourcesTest {
    @TempDir
    Path folder;

    private PracticeSources sources() {
        Records none = new Records(Map.of(), new Tables(), record -> null);
        return new PracticeSources(none, Map.of("lesson.txt", List.of()), new PracticeLog(folder.resolve("log")));
    }

    @Test
    void lessonsOfAThemeAreAboutTheTheme() {
        for (Theme theme : Theme.values()) {
            PracticeSources.Chosen chosen = sources().choose("theme-" + theme.word());
            assertTrue(chosen.title().startsWith(theme.title()), chosen.title());
            for (Motive motive : Motive.values()) {
                assertEquals(theme.about(motive), chosen.about().test(motive), theme + " " + motive);
            }
        }
    }

    @Test
    void lessonsOfPositionsAreAboutWhateverDecides() {
        PracticeSources.Chosen chosen = sources().choose("positions-1");
        for (Motive motive : Motive.values()) {
            assertTrue(chosen.about().test(motive), motive.name());
        }
        assertThrows(IllegalArgumentException.class, () -> sources().choose("theme-nothing"));
    }
}
