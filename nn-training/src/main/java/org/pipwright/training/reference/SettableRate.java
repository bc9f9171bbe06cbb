package org.pipwright.training.reference;

import org.nd4j.linalg.schedule.ISchedule;

/** A learning rate that is set before each step, so that the schedule stays ours whoever learns. */
final class SettableRate implements ISchedule {
    private static final long serialVersionUID = 1;

    double rate;

    @Override
    public double valueAt(int iteration, int epoch) {
        return rate;
    }

    /** All copies are one: configurations are cloned by Deeplearning4j, and must go on seeing the rate that is set. */
    @Override
    public ISchedule clone() {
        return this;
    }
}
