package org.pipwright.engine.play;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.play.StepRules.Obstacle;
import org.pipwright.engine.play.WrittenPlay.Hop;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * Plays what was written: every way to give the dice to the hops, in every order. Keeps what comes out, and where
 * nothing does, what was in the way of the attempts that got furthest. Whether both dice have to be played is not looked
 * at here.
 */
final class Reading {
    /** One way to play the hops to their ends. */
    record Outcome(Position result, int hits, int steps) {}

    /** What was in the way of a step of a hop, with the mover's rearmost place at that moment. */
    record Fault(Obstacle obstacle, Hop hop, int from, int die, int rearmost) {}

    private final List<Hop> hops;
    private final int[] dice;
    private final List<Outcome> outcomes = new ArrayList<>();
    private final List<Fault> faults = new ArrayList<>();
    private int furthest;

    private Reading(List<Hop> hops, Roll roll) {
        this.hops = hops;
        dice = StepRules.dice(roll);
    }

    static Reading of(List<Hop> hops, Position position, Roll roll) {
        Reading reading = new Reading(hops, roll);
        reading.play(position.toPlanes(), reading.starts(), 0, 0, 0);
        return reading;
    }

    /** Whether the dice have the pips for the hops, whatever is on the board. */
    static boolean fits(List<Hop> hops, Roll roll) {
        Reading reading = new Reading(hops, roll);
        return hops.size() <= reading.dice.length && reading.fits(reading.starts(), 0);
    }

    /** The ways to play the hops; empty if there is none. */
    List<Outcome> outcomes() {
        return outcomes;
    }

    /** What was in the way of the attempts that got furthest. */
    List<Fault> faults() {
        return faults;
    }

    private int[] starts() {
        return hops.stream().mapToInt(Hop::from).toArray();
    }

    private boolean done(int[] places) {
        for (int h = 0; h < places.length; h++) {
            if (places[h] != hops.get(h).to()) {
                return false;
            }
        }
        return true;
    }

    private void play(int[] planes, int[] places, int used, int hits, int depth) {
        if (done(places)) {
            outcomes.add(new Outcome(Position.ofPlanes(planes, 0), hits, depth));
            return;
        }
        for (int h = 0; h < places.length; h++) {
            for (int d = 0; d < dice.length; d++) {
                int[] moved = usable(used, d) ? advanced(places, h, dice[d]) : null;
                if (moved != null && fits(moved, used | 1 << d)) {
                    step(planes, places, moved, h, d, used, hits, depth);
                }
            }
        }
    }

    private void step(int[] planes, int[] places, int[] moved, int h, int d, int used, int hits, int depth) {
        Obstacle obstacle = StepRules.obstacle(planes, places[h], dice[d]);
        if (obstacle != Obstacle.NONE) {
            note(new Fault(obstacle, hops.get(h), places[h], dice[d], Planes.rearmost(planes, 0)), depth);
            return;
        }
        int[] after = planes.clone();
        boolean hit = StepRules.move(after, places[h], moved[h]);
        play(after, moved, used | 1 << d, hit ? hits | 1 << moved[h] : hits, depth + 1);
    }

    private void note(Fault fault, int depth) {
        if (depth > furthest) {
            furthest = depth;
            faults.clear();
        }
        if (depth == furthest) {
            faults.add(fault);
        }
    }

    private boolean fits(int[] places, int used) {
        if (done(places)) {
            return true;
        }
        for (int h = 0; h < places.length; h++) {
            for (int d = 0; d < dice.length; d++) {
                int[] moved = usable(used, d) ? advanced(places, h, dice[d]) : null;
                if (moved != null && fits(moved, used | 1 << d)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Whether die d is left; equal dice are used in order. */
    private boolean usable(int used, int d) {
        boolean earlierTwinLeft = d > 0 && dice[d] == dice[d - 1] && (used >> d - 1 & 1) == 0;
        return (used >> d & 1) == 0 && !earlierTwinLeft;
    }

    /** The places after one die for one hop, or null if that is past the hop's end. */
    private int[] advanced(int[] places, int h, int die) {
        int to = StepRules.target(places[h], die);
        if (places[h] == hops.get(h).to() || to < hops.get(h).to()) {
            return null;
        }
        int[] moved = places.clone();
        moved[h] = to;
        return moved;
    }
}
