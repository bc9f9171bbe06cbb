package org.pipwright.cli.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the address of the board holds. */
class SettingTest {
    private static SettingForm read(String query) {
        Map<String, String> fields = new HashMap<>();
        for (String field : query.isEmpty() ? new String[0] : query.split("&")) {
            String[] parts = field.split("=", 2);
            fields.put(parts[0], URLDecoder.decode(parts[1], StandardCharsets.UTF_8));
        }
        return SettingForm.parse(fields::get);
    }

    /** A bookmark brings back what it was made of. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "roll=3-1",
                "position=1@6+1@bar+/+3@5",
                "position=off+/+off&pick=off",
                "position=1@1+/+1@1+of+3&roll=6-6",
                "for=points&home=left",
                "no-jacoby=yes&beavers=yes",
                "for=match&away=1,4&crawford=yes&pips=hidden",
                "for=match&away=3,5&cube=2&owner=them&pick=their-bar",
                "cube=4&owner=centre",
                "cube=64&owner=me"
            })
    void addressesComeBack(String query) {
        SettingForm form = read(query);
        assertEquals(Map.of(), form.errors());
        assertEquals(query, form.setting().query());
    }

    /** What cannot be is told at its part of the page, and the rest stays. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "position=16@6+/+1@6&roll=3-1 | text | 16 checkers",
                "position=5@6+/+5@19&roll=3-1 | text | both sides have checkers on one point",
                "text=5@6+/&roll=3-1 | text | has nothing before or after the slash",
                "roll=7-1 | dice | is not a roll",
                "for=match&away=0,3&roll=3-1 | stakes | 1 to 1000 points",
                "for=match&away=x&roll=3-1 | stakes | as in 3,5",
                "for=match&away=3,5&crawford=yes&roll=3-1 | stakes | no Crawford game",
                "for=match&away=1,5&crawford=yes&cube=2&roll=3-1 | stakes | no doubling in the Crawford game",
                "for=match&away=3,5&cube=2&roll=3-1 | stakes | has an owner in a match",
                "cube=3&owner=me&roll=3-1 | stakes | power of two",
                "for=love&roll=3-1 | stakes | money, a match, or points"
            })
    void errorsStandWhereTheyBelong(String query, String part, String words) {
        SettingForm form = read(query);
        assertEquals(Set.of(part), form.errors().keySet());
        assertTrue(form.errors().get(part).contains(words), form.errors().get(part));
        if (!part.equals("dice")) {
            assertTrue(form.setting().roll().isPresent());
        }
    }

    @Test
    void sidesAreSwappedWithCubeAndScore() {
        Setting swapped = read("position=1@6+/+2@5&for=match&away=3,5&cube=2&owner=me&roll=3-1&pick=6")
                .setting()
                .swapped();
        assertEquals("position=2@5+/+1@6&for=match&away=5,3&cube=2&owner=them", swapped.query());
    }
}
