package org.pipwright.training.cuda;

import java.nio.file.Path;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.IntConsumer;
import org.pipwright.training.device.DeviceRequest;
import org.pipwright.training.device.DeviceTrainer;

/** Trains residual networks on an accelerator. */
abstract class AcceleratedTrainer implements DeviceTrainer {
    private final String device;
    private final Function<Recipe, Accelerator> accelerators;
    private final IntConsumer take;

    /**
     * Made without looking for the accelerator yet.
     *
     * @param device the word that asks for it
     * @param accelerators makes it
     * @param take takes it for this thread, and so many threads of this machine
     */
    AcceleratedTrainer(String device, Function<Recipe, Accelerator> accelerators, IntConsumer take) {
        this.device = device;
        this.accelerators = accelerators;
        this.take = take;
    }

    @Override
    public String device() {
        return device;
    }

    @Override
    public String settings(DeviceRequest request) {
        return TrainerRun.fresh(request, device).toText();
    }

    @Override
    public List<Path> train(DeviceRequest request, Consumer<String> say, BooleanSupplier stop) {
        if (!request.resume()) {
            Recipe.of(TrainerRun.fresh(request, device));
        }
        take.accept(request.threads());
        return new TrainerRun(request, device, accelerators, System::nanoTime, say, stop).train();
    }
}
