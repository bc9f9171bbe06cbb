package org.pipwright.cli.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.position.Position;

/** A board that is set up by hand. */
class LayoutTest {
    private static final List<Place> PLACES = Place.all();

    private static Place place(String name) {
        return Place.parse(name).orElseThrow();
    }

    private static int all(Layout layout, boolean mine) {
        return PLACES.stream().mapToInt(place -> layout.count(place, mine)).sum();
    }

    /** Whatever is done, it stays a position or the empty board: nobody can have 16 checkers, or stand on the other. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void whateverIsDoneStaysPossible(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Layout layout = seed % 2 == 0 ? Layout.empty() : Layout.of(Position.start());
        int refused = 0;
        for (int i = 0; i < 3000; i++) {
            Place from = PLACES.get(random.nextInt(PLACES.size()));
            Place to = PLACES.get(random.nextInt(PLACES.size()));
            try {
                layout = random.nextBoolean() || to.number() == 0
                        ? layout.moved(from, to)
                        : layout.with(to, to.point() ? random.nextBoolean() : !to.theirs(), random.nextInt(7));
            } catch (RefusedException e) {
                refused++;
            }
            assertEquals(15, all(layout, true));
            assertEquals(15, all(layout, false));
            assertEquals(layout.text(), Layout.parse(layout.text()).text());
            layout.position().ifPresent(Position::checkConsistency);
        }
        assertTrue(refused > 100, "something was tried that cannot be");
    }

    @Test
    void anEmptyBoardIsAPlaceToBegin() {
        Layout layout = Layout.empty();
        assertTrue(layout.position().isEmpty());
        layout = layout.moved(place("off"), place("6")).moved(place("their-off"), place("19"));
        assertEquals("1@6 / 1@6", layout.text());
        assertEquals("1@bar / 1@6", layout.moved(place("6"), place("bar")).text());
        assertEquals("1@6 / 1@bar", layout.moved(place("19"), place("bar")).text(), "to the bar of its own side");
        assertEquals("1@6 / 1@6", layout.swapped().text());
        assertEquals(
                "off / off",
                layout.moved(place("6"), place("off"))
                        .moved(place("19"), place("off"))
                        .text());
    }

    @ParameterizedTest
    @CsvSource({
        "6, 12, the other side holds point 12: a point holds checkers of one side only",
        "3, 2, there is no checker on point 3",
        "bar, 2, there is no checker on your bar",
        "their-off, 2, there is no checker on the opponent's tray"
    })
    void whatCannotBeIsRefused(String from, String to, String why) {
        Layout start = Layout.of(Position.start());
        assertEquals(
                why,
                assertThrows(RefusedException.class, () -> start.moved(place(from), place(to)))
                        .getMessage());
    }

    @Test
    void countsComeOutOfTheTray() {
        Layout start = Layout.of(Position.start());
        assertEquals(
                "3@8 5@13 2@24 / 5@6 3@8 5@13 2@24",
                start.with(place("6"), true, 0).text());
        assertEquals(
                "for point 6 there are only 5 of your checkers: a side has 15",
                assertThrows(RefusedException.class, () -> start.with(place("6"), true, 6))
                        .getMessage());
        assertThrows(RefusedException.class, () -> start.with(place("6"), false, 1));
        Layout few = Layout.parse("1@23 1@24 / 1@23 1@24 of 2");
        assertEquals(
                "2@23 / 1@23 1@24 of 2", few.moved(place("24"), place("23")).text());
    }
}
