package org.pipwright.training.cuda;

import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Horizon;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Roll;
import org.pipwright.training.device.RolledGame;
import org.pipwright.training.device.RolloutRules;

/**
 * A game that is rolled out in lockstep with others. A turn at a time, the plays it can choose among become positions for
 * which lookahead is asked; it goes on with the play whose position is worst for the other side.
 *
 * <p>The luck of the rolls is taken off. Let E be what lookahead says of a position and V(r) the equity of the best reply to
 * roll r as the net sees it: E is the mean of V over all rolls. A roll's luck is V(r) - E, whose mean is 0 whatever the net
 * says, so the value of a position is the mean over rolls of (E - V(r)) less the next position's value. Where both agree,
 * nothing is left to chance.
 */
final class RollingGame {
    private final RolledGame order;
    private final RolloutRules rules;
    private final Watch watch;

    /** Positions among which the side that played last chooses, with the other side on roll. */
    private final int[] planes;

    /** Their equities for the side on roll where they are known without lookahead, elsewhere not numbers. */
    private final double[] known;

    private int count;
    private int unknown;

    /** Place of the first unknown one among those asked about. */
    private int asked;

    private Roll roll;
    private int turns;

    /** The value so far for the side on roll at the start, and whether that side is on roll now: 1, or -1. */
    private double sum;

    /** The position before the last roll. */
    private final int[] before = new int[8];

    private Roll thrown;

    private int sign = 1;
    private boolean over;

    /** Told of plays that are chosen, by any thread. */
    interface Watch {
        /**
         * A play is chosen.
         *
         * @param order the game
         * @param before the position before the roll
         * @param roll the roll
         * @param after array with the position after it, the other side on roll
         * @param at where that begins
         */
        void chosen(RolledGame order, int[] before, Roll roll, int[] after, int at);
    }

    RollingGame(RolledGame order, RolloutRules rules, Watch watch) {
        this.order = order;
        this.rules = rules;
        this.watch = watch;
        planes = new int[8 * rules.choices()];
        known = new double[rules.choices()];
    }

    RolledGame order() {
        return order;
    }

    boolean over() {
        return over;
    }

    /** What it came to for the side on roll at its start. */
    double value() {
        return sum;
    }

    /** Positions to ask about. */
    int unknown() {
        return unknown;
    }

    /** The roll thrown in each of them. */
    Roll roll() {
        return roll;
    }

    /** Whether it stands where it began. */
    boolean first() {
        return turns == 0;
    }

    /** Before the first roll. */
    void begin(Horizon horizon) {
        order.start().copyTo(planes, 0);
        count = 1;
        settle(horizon);
    }

    /** Looks which positions are known, and ends the game if all are. */
    private void settle(Horizon horizon) {
        float[] chances = new float[6];
        unknown = 0;
        for (int k = 0; k < count; k++) {
            boolean sure = FinishedGames.write(planes, 8 * k, chances, 0) || horizon.write(planes, 8 * k, chances, 0);
            known[k] = sure ? Chances.equity(chances, 0) : Double.NaN;
            unknown += sure ? 0 : 1;
        }
        if (unknown == 0) {
            int best = 0;
            for (int k = 1; k < count; k++) {
                best = known[k] < known[best] ? k : best;
            }
            tell(best);
            end(known[best]);
        } else {
            roll = order.dice().get();
        }
    }

    private void tell(int chosen) {
        if (!first()) {
            watch.chosen(order, before, thrown, planes, 8 * chosen);
        }
    }

    private void end(double equity) {
        sum += sign * equity;
        over = true;
    }

    /** Writes the positions to ask about. */
    void ask(int[] to, PlaysBatch batch, int at) {
        asked = at;
        int next = at;
        for (int k = 0; k < count; k++) {
            if (Double.isNaN(known[k])) {
                System.arraycopy(planes, 8 * k, to, 8 * next, 8);
                batch.rolls.putInt(4 * next, roll.index());
                next++;
            }
        }
    }

    /** Whether all that was asked was answered; if not, it has to be asked again. */
    boolean hasAnswers(PlaysBatch batch) {
        for (int place = asked; place < asked + unknown; place++) {
            if (batch.leftOut(place)) {
                return false;
            }
        }
        return true;
    }

    /** Chooses by what was answered, and plays the roll; gives the answer of the position chosen, or null if it was known. */
    LaneAnswer answered(PlaysBatch batch, Horizon horizon) {
        double least = Double.POSITIVE_INFINITY;
        int chosen = -1;
        int best = 0;
        int next = asked;
        for (int k = 0; k < count; k++) {
            int place = Double.isNaN(known[k]) ? next++ : -1;
            double equity = place < 0 ? known[k] : LaneAnswer.expected(batch, place);
            if (equity < least) {
                least = equity;
                chosen = place;
                best = k;
            }
        }
        tell(best);
        if (chosen < 0) {
            end(least);
            return null;
        }
        LaneAnswer answer = LaneAnswer.of(batch, chosen);
        play(best, answer, horizon);
        return answer;
    }

    /** Plays the first roll of a start of which this is known. */
    void begun(LaneAnswer answer, Horizon horizon) {
        play(0, answer, horizon);
    }

    private void play(int chosen, LaneAnswer answer, Horizon horizon) {
        if (rules.truncation() > 0 && turns >= rules.truncation() && Planes.contact(planes, 8 * chosen)) {
            end(answer.expected());
            return;
        }
        sum += sign * (answer.expected() - answer.best());
        sign = -sign;
        turns++;
        System.arraycopy(planes, 8 * chosen, before, 0, 8);
        thrown = roll;
        choices(answer);
        settle(horizon);
    }

    /** The best results within the margin become positions of the other side. */
    private void choices(LaneAnswer answer) {
        double[] equities = answer.equities().clone();
        count = 0;
        while (count < Math.min(rules.choices(), equities.length)) {
            int best = 0;
            for (int k = 1; k < equities.length; k++) {
                best = equities[k] > equities[best] ? k : best;
            }
            if (equities[best] < answer.best() - rules.choiceMargin()) {
                return;
            }
            Planes.copySwapped(answer.results(), 8 * best, planes, 8 * count++);
            equities[best] = Double.NEGATIVE_INFINITY;
        }
    }
}
