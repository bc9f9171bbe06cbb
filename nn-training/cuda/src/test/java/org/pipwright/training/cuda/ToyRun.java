package org.pipwright.training.cuda;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.pipwright.training.device.DeviceRequest;

/** A whole run by plain loops that takes seconds: small nets, few games, and a clock that moves each time it is asked. */
final class ToyRun {
    /** Some sixty turns of lanes after a hundred steps of copying, whatever else the machine does. */
    static final String SETTINGS = """
            minutes = 0.08
            deep = 128x1
            quick = 128x1
            pupils = 128x2
            copy.seconds = 0.24
            games = 4
            random.turns = 4
            memory = 4000
            batch = 64
            quick.steps = 1
            rate = 0.003
            average = 0.98
            rival = fifth
            evaluation.seconds = 2
            evaluation.pairs = 4
            final.pairs = 20
            max.turns = 12
            checkpoint.seconds = 0.7
            """;

    private static final long TICK = 10_000_000;

    final List<String> said = Collections.synchronizedList(new ArrayList<>());
    private final AtomicLong now = new AtomicLong();

    static DeviceRequest request(Path folder, Path settings, boolean resume) {
        return new DeviceRequest(
                Optional.of(folder),
                Optional.empty(),
                Optional.ofNullable(settings),
                Optional.empty(),
                Optional.empty(),
                resume,
                2,
                report -> Optional.of(report.toString()));
    }

    List<Path> train(DeviceRequest request, BooleanSupplier stop) {
        return train(request, PlainAccelerator::new, stop);
    }

    List<Path> train(DeviceRequest request, Function<Recipe, Accelerator> accelerators, BooleanSupplier stop) {
        return new TrainerRun(request, CudaTrainer.DEVICE, accelerators, () -> now.addAndGet(TICK), said::add, stop)
                .train();
    }
}
