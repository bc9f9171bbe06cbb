package org.pipwright.training.cuda;

import java.nio.file.Path;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.pipwright.training.device.DeviceRequest;
import org.pipwright.training.device.DeviceTrainer;

/** Trains residual networks by the threads of this machine, as a card does, only slower: small ones, over a night. */
public final class ThreadTrainer implements DeviceTrainer {
    /** The word that asks for it. */
    static final String DEVICE = "threads";

    /** Threads of the pool that streams in parallel use besides their own; read when it is first used. */
    private static final String POOL = "java.util.concurrent.ForkJoinPool.common.parallelism";

    /** Makes the trainer. */
    public ThreadTrainer() {}

    @Override
    public String device() {
        return DEVICE;
    }

    @Override
    public String settings(DeviceRequest request) {
        return TrainerRun.fresh(request, DEVICE).toText();
    }

    @Override
    public List<Path> train(DeviceRequest request, Consumer<String> say, BooleanSupplier stop) {
        if (!request.resume()) {
            Recipe.of(TrainerRun.fresh(request, DEVICE));
        }
        take(request.threads());
        return new TrainerRun(request, DEVICE, ThreadAccelerator::new, System::nanoTime, say, stop).train();
    }

    /** From now on so many threads of this machine work, this one among them. */
    static void take(int threads) {
        System.setProperty(POOL, Integer.toString(threads - 1));
    }
}
