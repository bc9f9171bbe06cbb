package org.pipwright.engine.rollout;

/** Wants a rollout to end before its first roll. */
final class Stopped implements RolloutListener<Object> {
    @Override
    public boolean round(Object report) {
        return true;
    }

    @Override
    public boolean stopped() {
        return true;
    }
}
