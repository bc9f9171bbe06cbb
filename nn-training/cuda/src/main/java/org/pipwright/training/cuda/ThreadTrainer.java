package org.pipwright.training.cuda;

/** Trains residual networks by the threads of this machine, as a card does, only slower: small ones, over a night. */
public final class ThreadTrainer extends AcceleratedTrainer {
    /** The word that asks for it. */
    static final String DEVICE = "threads";

    /** Threads of the pool that streams in parallel use besides their own; read when it is first used. */
    private static final String POOL = "java.util.concurrent.ForkJoinPool.common.parallelism";

    /** Makes the trainer. */
    public ThreadTrainer() {
        super(DEVICE, recipe -> new ThreadAccelerator(recipe), ThreadTrainer::take);
    }

    /** From now on so many threads of this machine work, this one among them. */
    static void take(int threads) {
        System.setProperty(POOL, Integer.toString(threads - 1));
    }
}
