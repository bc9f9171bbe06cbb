package org.pipwright.training.cuda;

import java.nio.file.Path;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.pipwright.training.device.DeviceRequest;
import org.pipwright.training.device.DeviceTrainer;

/** Trains residual networks on an NVIDIA card. */
public final class CudaTrainer implements DeviceTrainer {
    /** The word that asks for it. */
    static final String DEVICE = "cuda";

    /** Makes the trainer, without looking for a card yet. */
    public CudaTrainer() {}

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
        return new TrainerRun(request, DEVICE, CudaAccelerator::new, System::nanoTime, say, stop).train();
    }

    /**
     * Takes the card for this thread, and so many threads of this machine.
     *
     * @throws org.pipwright.training.device.MissingDeviceException if there is no card, or a library it needs is missing
     */
    static void take(int threads) {
        ThreadTrainer.take(threads);
        Gpu.load();
        Gpu.use();
    }
}
