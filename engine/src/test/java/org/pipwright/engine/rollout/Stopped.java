package org.pipwright.engine.rollout;

/** Wants a rollout to end before its first roll. */
final class Stopped implements RolloutListener {
    @Override
    public boolean round(RolloutReport report) {
        return true;
    }

    @Override
    public boolean stopped() {
        return true;
    }
}
