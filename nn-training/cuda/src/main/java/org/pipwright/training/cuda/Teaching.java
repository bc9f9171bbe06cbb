package org.pipwright.training.cuda;

import java.util.List;

/** What networks learn in a turn of a lane: from the memory, and from what the deep one has just judged. */
final class Teaching {
    /** Batches that the memory holds before anyone learns from it, or the first ones would be learned by heart. */
    private static final int BATCHES_FIRST = 32;

    /** Steps in which the rate rises from nothing for a network that begins without having copied another. */
    private static final double WARMING_UP = 300;

    private final Recipe recipe;
    private final Accelerator accelerator;
    private final Seeds seeds;
    private final List<Integer> learning;
    private double debt;

    Teaching(Recipe recipe, Accelerator accelerator, Seeds seeds) {
        this.recipe = recipe;
        this.accelerator = accelerator;
        this.seeds = seeds;
        learning = recipe.learning();
    }

    /** After a lane was judged and its lessons remembered. */
    void turn(LaneJudge judge, int lessons, float rate) {
        if (recipe.teachOnly()) {
            pupils(judge, rate);
            return;
        }
        fromMemory(lessons, rate);
        for (int k = 0; k < recipe.quickSteps(); k++) {
            judge.teach(seeds.next(), rate, List.of(Recipe.QUICK));
        }
    }

    private boolean hasLessons() {
        int batch = recipe.learner().batch();
        return accelerator.remembered() >= Math.min(recipe.memory(), BATCHES_FIRST * batch);
    }

    private void fromMemory(int lessons, float rate) {
        if (!hasLessons()) {
            return;
        }
        debt += lessons * recipe.uses() / recipe.learner().batch();
        for (; debt >= 1; debt--) {
            accelerator.learn(seeds.next(), rate, learning);
        }
    }

    private void pupils(LaneJudge judge, float highest) {
        for (int k = 0; k < recipe.teachSteps(); k++) {
            float rate = (float) (highest * Math.min(1, (accelerator.steps(learning.get(0)) + 1) / WARMING_UP));
            if (k % 4 == 0 && hasLessons()) {
                accelerator.learn(seeds.next(), rate, learning);
            } else {
                judge.teach(seeds.next(), rate, learning);
            }
        }
    }
}
