package org.pipwright.engine.position;

/** Checker counts of one side while its text is read: what is not on the board has been borne off. */
final class SideCounts {
    private static final int UNSAID = -1;

    private final String who;
    private final int[] counts = new int[Planes.PLACES];
    private int onBoard;
    private int off = UNSAID;

    SideCounts(String who) {
        this.who = who;
    }

    void put(int place, int count) {
        if (place == Planes.OFF ? off != UNSAID : counts[place] != 0) {
            throw new InvalidPositionException(who + " names " + placeName(place) + " twice: join the groups");
        }
        if (place == Planes.OFF) {
            off = count;
        } else {
            counts[place] = count;
            onBoard += count;
        }
    }

    private static String placeName(int place) {
        if (place == Planes.OFF) {
            return "the checkers off";
        }
        return place == Planes.BAR ? "the bar" : "point " + place;
    }

    /** The 26 counts for a number of checkers a side. */
    int[] complete(int checkers) {
        if (onBoard > checkers) {
            throw new InvalidPositionException(who + " has " + onBoard + " checkers on the board: at most " + checkers);
        }
        if (off != UNSAID && off + onBoard != checkers) {
            throw new InvalidPositionException(who + " has " + onBoard + " checkers on the board and " + off
                    + " off: together they must be " + checkers);
        }
        counts[Planes.OFF] = checkers - onBoard;
        return counts;
    }
}
