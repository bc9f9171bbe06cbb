package org.pipwright.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Options of the benchmarks' commands. */
class OptionsTest {
    private static Options options(String line) {
        return new Options(List.of(line.split(" ")), Set.of("--net", "--threads"), Set.of("--json"));
    }

    @Test
    void readsValuesAndFlags() {
        Options options = options("--threads 3 --json --net a");

        assertEquals(3, options.number("--threads", 1, 1, 8));
        assertEquals("a", options.required("--net"));
        assertTrue(options.has("--json"));
    }

    @Test
    void leavesOutWhatIsNotThere() {
        Options options = options("--net a");

        assertEquals(7, options.number("--threads", 7, 1, 8));
        assertEquals(Optional.empty(), options.text("--threads"));
        assertFalse(options.has("--json"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"--nets a", "a", "--net", "--json x", "--threads 1 --lookahead 2"})
    void unknownWordsAndMissingValuesAreErrors(String line) {
        assertThrows(IllegalArgumentException.class, () -> options(line));
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "9", "-1", "1.5", "x", "99999999999"})
    void numbersOutOfRangeAreErrors(String number) {
        Options options = options("--threads " + number);

        assertThrows(IllegalArgumentException.class, () -> options.number("--threads", 1, 1, 8));
    }

    @Test
    void requiredOptionsAreRequired() {
        Options options = options("--threads 1");

        assertThrows(IllegalArgumentException.class, () -> options.required("--net"));
    }
}
