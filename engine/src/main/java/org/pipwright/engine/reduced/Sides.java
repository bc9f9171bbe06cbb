package org.pipwright.engine.reduced;

import java.util.Comparator;
import java.util.stream.IntStream;
import org.pipwright.engine.position.Planes;

/**
 * All arrangements of one side's n checkers on 26 places (off, 24 points, bar), numbered by rising pip count: C(n+25, n)
 * of them. Number 0 has every checker off. Immutable.
 */
final class Sides {
    /** Most checkers: four a side would make 339 million positions. */
    static final int MAX_CHECKERS = 3;

    /** Sets of blots that can be hit together, at most one blot a checker. */
    static final int HIT_SETS = 1 << MAX_CHECKERS;

    /** Stands for a blot that is not there; no play lands on it. */
    private static final int NO_POINT = 30;

    private final int checkers;
    private final int[] keys;
    private final int[] indexOfKey;
    private final int[] firstOfPips;
    private final int[] planes;
    private final int[] blotPoints;
    private final int[] afterHits;

    Sides(int checkers) {
        if (checkers < 1 || checkers > MAX_CHECKERS) {
            throw new IllegalArgumentException(
                    "games with 1 to " + MAX_CHECKERS + " checkers a side can be solved, not with " + checkers);
        }
        this.checkers = checkers;
        indexOfKey = new int[power(Planes.PLACES, checkers)];
        keys = sortedKeys();
        for (int i = 0; i < keys.length; i++) {
            indexOfKey[keys[i]] = i;
        }
        firstOfPips = firstOfPips();
        planes = allPlanes();
        blotPoints = new int[keys.length * MAX_CHECKERS];
        afterHits = new int[keys.length * HIT_SETS];
        for (int i = 0; i < keys.length; i++) {
            fillHits(i);
        }
    }

    private static int power(int base, int exponent) {
        return exponent == 0 ? 1 : base * power(base, exponent - 1);
    }

    private int[] sortedKeys() {
        return IntStream.range(0, indexOfKey.length)
                .filter(this::isKey)
                .boxed()
                .sorted(Comparator.comparingInt(Sides::pipsOfKey))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** A key has the checkers' places as digits to base 26, none larger than the digit before it. */
    private boolean isKey(int number) {
        int rest = number;
        for (int c = 1; c < checkers; c++) {
            if (rest % Planes.PLACES > rest / Planes.PLACES % Planes.PLACES) {
                return false;
            }
            rest /= Planes.PLACES;
        }
        return true;
    }

    private static int pipsOfKey(int key) {
        int pips = 0;
        for (int rest = key; rest > 0; rest /= Planes.PLACES) {
            pips += rest % Planes.PLACES;
        }
        return pips;
    }

    private int[] firstOfPips() {
        int[] first = new int[mostPips() + 2];
        int index = 0;
        for (int pips = 0; pips < first.length; pips++) {
            while (index < keys.length && pipsOfKey(keys[index]) < pips) {
                index++;
            }
            first[pips] = index;
        }
        return first;
    }

    private int[] allPlanes() {
        int[] all = new int[keys.length * Planes.SIDE];
        for (int i = 0; i < keys.length; i++) {
            int rest = keys[i];
            for (int c = 0; c < checkers; c++) {
                Planes.add(all, i * Planes.SIDE, rest % Planes.PLACES);
                rest /= Planes.PLACES;
            }
        }
        return all;
    }

    private void fillHits(int side) {
        int blots = planes[side * Planes.SIDE] & ~Planes.held(planes, side * Planes.SIDE) & Planes.POINTS;
        int[] own = new int[MAX_CHECKERS];
        for (int b = 0; b < MAX_CHECKERS; b++) {
            own[b] = Integer.numberOfTrailingZeros(blots);
            blotPoints[side * MAX_CHECKERS + b] = blots == 0 ? NO_POINT : Planes.BAR - own[b];
            blots &= blots - 1;
        }
        int[] hit = new int[Planes.SIDE];
        for (int set = 0; set < HIT_SETS; set++) {
            System.arraycopy(planes, side * Planes.SIDE, hit, 0, Planes.SIDE);
            for (int b = 0; b < MAX_CHECKERS; b++) {
                if ((set >> b & 1) != 0 && own[b] < Planes.BAR) {
                    Planes.remove(hit, 0, own[b]);
                    Planes.add(hit, 0, Planes.BAR);
                }
            }
            afterHits[side * HIT_SETS + set] = index(hit, 0);
        }
    }

    /** Checkers a side. */
    int checkers() {
        return checkers;
    }

    /** Number of arrangements. */
    int size() {
        return keys.length;
    }

    /** Highest pip count: all on the bar. */
    int mostPips() {
        return Planes.BAR * checkers;
    }

    /** Pip count of an arrangement. */
    int pips(int side) {
        return pipsOfKey(keys[side]);
    }

    /** First arrangement with at least so many pips; pips may be {@link #mostPips()} + 1. */
    int firstOfPips(int pips) {
        return firstOfPips[pips];
    }

    /** Number of the arrangement whose four planes start at an index. */
    int index(int[] from, int at) {
        int key = 0;
        int seen = 0;
        for (int places = Planes.occupied(from, at); places != 0; ) {
            int place = 31 - Integer.numberOfLeadingZeros(places);
            places ^= 1 << place;
            for (int count = Planes.count(from, at, place); count > 0 && seen < checkers; count--) {
                key = key * Planes.PLACES + place;
                seen++;
            }
        }
        return indexOfKey[key];
    }

    /** Writes an arrangement's four planes. */
    void copyPlanes(int side, int[] target, int at) {
        System.arraycopy(planes, side * Planes.SIDE, target, at, Planes.SIDE);
    }

    int occupied(int side) {
        return Planes.occupied(planes, side * Planes.SIDE);
    }

    int rearmost(int side) {
        return Planes.rearmost(planes, side * Planes.SIDE);
    }

    /** Points that an arrangement blocks, in the numbering of the other side. */
    int blocks(int side) {
        return Planes.mirror(Planes.held(planes, side * Planes.SIDE)) & Planes.POINTS;
    }

    /** The b-th blot of an arrangement as the other side's point, or a point no play lands on. */
    int blotPoint(int side, int b) {
        return blotPoints[side * MAX_CHECKERS + b];
    }

    /** The arrangement after hits on a set of blots: bit b for the b-th. */
    int afterHits(int side, int set) {
        return afterHits[side * HIT_SETS + set];
    }
}
