package org.pipwright.training.cuda;

import java.nio.file.Path;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.pipwright.training.device.DeviceRequest;
import org.pipwright.training.device.DeviceTrainer;

/** Trains residual networks on an NVIDIA card. */
public final class CudaTrainer implements DeviceTrainer {
    /** Threads of the pool that streams in parallel use besides their own; read when it is first used. */
    private static final String POOL = "java.util.concurrent.ForkJoinPool.common.parallelism";

    /** Makes the trainer, without looking for a card yet. */
    public CudaTrainer() {}

    @Override
    public String device() {
        return "cuda";
    }

    @Override
    public String settings(DeviceRequest request) {
        return TrainerRun.fresh(request).toText();
    }

    @Override
    public List<Path> train(DeviceRequest request, Consumer<String> say, BooleanSupplier stop) {
        if (!request.resume()) {
            Recipe.of(TrainerRun.fresh(request));
        }
        take(request.threads());
        return new TrainerRun(request, CudaAccelerator::new, System::nanoTime, say, stop).train();
    }

    /**
     * Takes the card for this thread, and so many threads of this machine.
     *
     * @throws org.pipwright.training.device.MissingDeviceException if there is no card, or a library it needs is missing
     */
    static void take(int threads) {
        System.setProperty(POOL, Integer.toString(threads - 1));
        Gpu.load();
        Gpu.use();
    }
}
