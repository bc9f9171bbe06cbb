package org.pipwright.engine.drill;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

/** What belongs to a theme and what does not. */
class ThemeTest {
    private static final String RUNNER = "5@6 3@8 3@7 2@5 1@4 1@24 / 4@6 3@5 3@4 3@7 2@13";

    @ParameterizedTest
    @CsvSource({
        "opening, start, true",
        // Twelve checkers of each side still where they were.
        "opening, 2@5 3@6 3@8 5@13 2@23 / 2@5 3@6 3@8 5@13 2@23, false",
        "opening, 2@5 4@6 2@8 5@13 2@24 / 2@5 4@6 2@8 5@13 2@24, true",
        "hitting, start, true",
        "hitting, 15@6 / 15@6, false",
        "escaping, start, false",
        "escaping, " + RUNNER + ", true",
        // Nothing in front of the checker on 24 but two points.
        "escaping, 5@6 3@8 3@7 2@5 1@4 1@24 / 4@6 5@5 4@8 2@13, false",
        "bearing-in, 7@6 5@5 2@4 1@12 / 2@1 5@6 5@5 3@4, true",
        "bearing-in, 7@6 5@5 2@4 1@13 / 2@1 5@6 5@5 3@4, false",
        "bearing-in, 7@6 5@5 3@4 / 2@1 5@6 5@5 3@4, false",
        "bearing-off, 7@6 5@5 3@4 / 2@1 5@6 5@5 3@4, true",
        "bearing-off, 7@6 5@5 2@4 1@7 / 2@1 5@6 5@5 3@4, false",
        "race-doubles, 7@6 5@5 3@4 / 2@1 5@6 5@5 3@4, true",
        "race-doubles, start, false",
        "takes-and-passes, start, true",
        "match-scores, start, true"
    })
    void comesUp(String word, String position, boolean expected) {
        Theme theme = Theme.named(word).orElseThrow();
        assertEquals(expected, theme.comesUpIn(PositionText.parse(position)));
    }

    @ParameterizedTest
    @CsvSource({
        "hitting, 5@6 3@8 5@13 2@24 / 5@6 3@8 4@13 1@20 2@24, 6-2, 24/18 13/11, 24/16, false",
        "hitting, 5@6 3@8 5@13 2@24 / 5@6 3@8 4@13 1@21 2@24, 4-2, 8/4* 6/4, 24/20 13/11, true",
        "hitting, 5@6 3@8 5@13 2@24 / 5@6 3@8 4@13 1@21 2@24, 4-2, 24/20 13/11, 8/4* 6/4, true",
        // Five points in a row against four.
        "priming, 2@5 3@6 2@7 2@8 1@10 4@13 1@24 / start, 4-1, 13/9 10/9, 13/8, true",
        // Three in a row are no prime.
        "priming, start, 6-1, 13/7 8/7, 24/18 24/23, false",
        "priming, start, 3-1, 8/5 6/5, 24/20, false",
        "escaping, " + RUNNER + ", 6-1, 24/17, 8/7 8/2, true",
        "opening, start, 3-1, 8/5 6/5, 24/20, true"
    })
    void setsApart(String word, String before, String roll, String best, String other, boolean expected) {
        Position position = PositionText.parse(before.replace("/ start", "/ 5@6 3@8 5@13 2@24"));
        Theme theme = Theme.named(word).orElseThrow();
        assertTrue(theme.comesUpIn(position));
        assertEquals(expected, theme.setsApart(position, result(position, roll, best), result(position, roll, other)));
    }

    private static Position result(Position position, String roll, String play) {
        return PlayText.parse(play, position, Roll.parse(roll)).result();
    }

    @ParameterizedTest
    @EnumSource(Theme.class)
    void aThemeIsFoundByItsWord(Theme theme) {
        assertEquals(Optional.of(theme), Theme.named(theme.word()));
        assertTrue(theme.word().matches("[a-z-]+"));
        assertFalse(theme.about().isEmpty());
        assertEquals(theme.word().replace('-', ' '), theme.title().toLowerCase(java.util.Locale.ROOT));
    }

    @Test
    void otherWordsNameNone() {
        assertEquals(Optional.empty(), Theme.named("Opening"));
    }
}
