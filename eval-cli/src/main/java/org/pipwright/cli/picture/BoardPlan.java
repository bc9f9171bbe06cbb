package org.pipwright.cli.picture;

/**
 * Where things go on a board's page, in units. The side on roll has its home at the lower right. Points are upright
 * slots that hold five checkers one above the other; higher stacks overlap.
 */
final class BoardPlan {
    static final double WIDTH = 700;
    static final double HEIGHT = 480;
    static final double MARGIN = 10;
    static final double RADIUS = 17;
    static final double SLOT = 36;
    static final double SLOT_LENGTH = 176;
    static final double MIDDLE = HEIGHT / 2;
    static final double FIELD_TOP = 34;
    static final double FIELD_HEIGHT = HEIGHT - 2 * FIELD_TOP;
    static final double HALF_WIDTH = 248;
    static final double BAR_WIDTH = 46;
    static final double RIGHT_HALF = MARGIN + HALF_WIDTH + BAR_WIDTH;
    static final double PANEL = RIGHT_HALF + HALF_WIDTH + 12;
    static final double LETTER = 19;

    private static final double PITCH = 40;
    private static final double PAD = 4;
    private static final double STEP = 35;
    private static final int EASY = 5;
    private static final double OFF_STEP = 24;
    private static final double BAR_GAP = 44;

    private BoardPlan() {}

    /** Whether a point of the side on roll is in the upper row. */
    static boolean upper(int point) {
        return point > 12;
    }

    /** The middle of a point, left to right. */
    static double x(int point) {
        int column = upper(point) ? point - 13 : 12 - point;
        double half = column < 6 ? MARGIN : RIGHT_HALF;
        return half + PAD + PITCH / 2 + PITCH * (column % 6);
    }

    /** The upper end of a point's slot. */
    static double slotTop(int point) {
        return upper(point) ? FIELD_TOP + PAD : HEIGHT - FIELD_TOP - PAD - SLOT_LENGTH;
    }

    /** A checker on a point of the side on roll: the index-th from the edge, 0 first, of a stack of so many. */
    static Spot checker(int point, int index, int stack) {
        double depth = SLOT / 2 + index * step(stack);
        return new Spot(x(point), upper(point) ? slotTop(point) + depth : slotTop(point) + SLOT_LENGTH - depth);
    }

    /** A checker on the bar: the index-th from the middle. */
    static Spot bar(boolean mine, int index, int stack) {
        double depth = BAR_GAP + index * step(stack);
        return new Spot(MARGIN + HALF_WIDTH + BAR_WIDTH / 2, mine ? MIDDLE + depth : MIDDLE - depth);
    }

    /** Where a checker of the side on roll goes that is borne off, the first of a roll at the bottom. */
    static Spot off(int index) {
        return new Spot(PANEL - 4, MIDDLE + SLOT_LENGTH / 2 + 20 - OFF_STEP * index);
    }

    private static double step(int stack) {
        return stack <= EASY ? STEP : (EASY - 1) * STEP / (stack - 1);
    }
}
