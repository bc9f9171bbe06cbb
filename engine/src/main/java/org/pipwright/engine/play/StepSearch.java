package org.pipwright.engine.play;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * Finds the steps that lead to given results of a roll. Tries every order of the dice, the higher die first, sources from
 * the highest down; keeps the longest steps to a result and of those the first found. For a double, sources never rise
 * within a play: any legal order can be put so.
 */
final class StepSearch {
    private final Map<Position, List<Step>> wanted;
    private final boolean rising;
    private final List<Step> steps = new ArrayList<>(4);

    private StepSearch(Map<Position, List<Step>> wanted, boolean rising) {
        this.wanted = wanted;
        this.rising = rising;
    }

    /**
     * Fills in steps.
     *
     * @param wanted results, from the mover's side, with empty lists that are replaced by steps
     */
    static void fill(Position position, Roll roll, Map<Position, List<Step>> wanted) {
        StepSearch search = new StepSearch(wanted, !roll.isDouble());
        search.play(position.toPlanes(), StepRules.dice(roll), Planes.BAR);
    }

    private void play(int[] planes, int[] dice, int highest) {
        for (int i = 0; i < dice.length; i++) {
            if (i > 0 && dice[i] == dice[i - 1]) {
                continue;
            }
            int[] rest = without(dice, i);
            for (int from = highest; from > Planes.OFF; from--) {
                if (StepRules.obstacle(planes, from, dice[i]) == StepRules.Obstacle.NONE) {
                    playOne(planes.clone(), from, dice[i], rest);
                }
            }
        }
    }

    private void playOne(int[] planes, int from, int die, int[] rest) {
        int to = StepRules.target(from, die);
        steps.add(new Step(from, to, StepRules.move(planes, from, to)));
        wanted.computeIfPresent(
                Position.ofPlanes(planes, 0),
                (result, known) -> known.size() < steps.size() ? List.copyOf(steps) : known);
        play(planes, rest, rising ? Planes.BAR : from);
        steps.remove(steps.size() - 1);
    }

    private static int[] without(int[] dice, int index) {
        int[] rest = new int[dice.length - 1];
        System.arraycopy(dice, 0, rest, 0, index);
        System.arraycopy(dice, index + 1, rest, index, rest.length - index);
        return rest;
    }
}
