package org.pipwright.engine.position;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.naive.NaiveBoard;
import org.pipwright.engine.naive.NaiveRules;
import org.pipwright.engine.regime.RandomBoards;

/** Every plane operation against the same thing on plain counts. */
@Tag("fast")
class PlanesTest {
    private static final int BOARDS = 20_000;

    /** Ints before the position, so that a forgotten offset shows. */
    private static final int AT = 3;

    @Test
    void countsPipsAndRearmost() {
        RandomBoards.of(1, BOARDS).forEach(board -> {
            int[] planes = shifted(board);
            for (int place = 0; place < Planes.PLACES; place++) {
                assertEquals(board.mine(place), Planes.count(planes, AT, place));
                assertEquals(board.theirs(place), Planes.count(planes, AT + Planes.SIDE, place));
            }
            assertEquals(NaiveRules.pips(board), Planes.pips(planes, AT));
            assertEquals(NaiveRules.pips(board.swapped()), Planes.pips(planes, AT + Planes.SIDE));
            assertEquals(board.rearmost(), Planes.rearmost(planes, AT));
            assertEquals(board.swapped().rearmost(), Planes.rearmost(planes, AT + Planes.SIDE));
        });
    }

    @Test
    void occupiedHeldAndCheckersOfAnySet() {
        SplittableRandom random = new SplittableRandom(2);
        RandomBoards.of(2, BOARDS).forEach(board -> {
            int[] planes = shifted(board);
            int places = random.nextInt(1 << Planes.PLACES);
            int occupied = 0;
            int held = 0;
            int checkers = 0;
            for (int place = 0; place < Planes.PLACES; place++) {
                occupied |= board.mine(place) >= 1 ? 1 << place : 0;
                held |= board.mine(place) >= 2 ? 1 << place : 0;
                checkers += (places >> place & 1) != 0 ? board.mine(place) : 0;
            }
            assertEquals(occupied, Planes.occupied(planes, AT));
            assertEquals(held, Planes.held(planes, AT));
            assertEquals(checkers, Planes.checkers(planes, AT, places));
        });
    }

    @Test
    void contactIsTheSameFromBothSides() {
        int[] met = new int[2];
        RandomBoards.of(3, BOARDS).forEach(board -> {
            boolean contact = NaiveRules.contact(board);
            assertEquals(contact, Planes.contact(shifted(board), AT), board::toString);
            assertEquals(contact, Planes.contact(shifted(board.swapped()), AT), board::toString);
            met[contact ? 1 : 0]++;
        });
        assertEquals(2, (met[0] > 1000 ? 1 : 0) + (met[1] > 1000 ? 1 : 0), "boards with and without contact");
    }

    @Test
    void noContactOnceOneSideIsOff() {
        int[] off = new int[Planes.PLACES];
        off[Planes.OFF] = 15;
        for (int place = 1; place <= Planes.BAR; place++) {
            int[] on = new int[Planes.PLACES];
            on[place] = 15;
            assertFalse(Planes.contact(NaiveBoard.of(on, off).toPlanes(), 0));
            assertFalse(Planes.contact(NaiveBoard.of(off, on).toPlanes(), 0));
        }
    }

    /** A chain of adds and removes on all places, with counts up to 15, tracked on an array. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void addAndRemoveFollowAnArray(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int[] counts = new int[Planes.PLACES];
        int[] planes = new int[AT + Planes.SIDE + 1];
        planes[AT - 1] = -1;
        planes[AT + Planes.SIDE] = -1;
        for (int i = 0; i < 50_000; i++) {
            int place = random.nextInt(Planes.PLACES);
            boolean add = counts[place] == 0 || counts[place] < 15 && random.nextBoolean();
            if (add) {
                Planes.add(planes, AT, place);
                counts[place]++;
            } else {
                Planes.remove(planes, AT, place);
                counts[place]--;
            }
            for (int p = 0; p < Planes.PLACES; p++) {
                assertEquals(counts[p], Planes.count(planes, AT, p));
            }
        }
        assertEquals(-1, planes[AT - 1]);
        assertEquals(-1, planes[AT + Planes.SIDE]);
    }

    @Test
    void mirrorMovesEachPlaceToTheOtherSidesNumber() {
        for (int place = 0; place < Planes.PLACES; place++) {
            assertEquals(1 << 25 - place, Planes.mirror(1 << place));
        }
        SplittableRandom random = new SplittableRandom(4);
        for (int i = 0; i < 1000; i++) {
            int places = random.nextInt(1 << Planes.PLACES);
            assertEquals(places, Planes.mirror(Planes.mirror(places)));
        }
    }

    @Test
    void copySwappedTwiceIsTheIdentity() {
        RandomBoards.of(5, BOARDS).forEach(board -> {
            int[] once = new int[2 + Planes.STRIDE];
            Planes.copySwapped(shifted(board), AT, once, 2);
            assertEquals(board.swapped(), NaiveBoard.ofPlanes(once, 2));
            int[] twice = new int[Planes.STRIDE];
            Planes.copySwapped(once, 2, twice, 0);
            assertArrayEquals(board.toPlanes(), twice);
        });
    }

    private static int[] shifted(NaiveBoard board) {
        int[] planes = new int[AT + Planes.STRIDE];
        System.arraycopy(board.toPlanes(), 0, planes, AT, Planes.STRIDE);
        return planes;
    }
}
