package org.pipwright.training.cuda;

import java.nio.file.Files;
import java.nio.file.Path;

/** A toy run to be killed: begins or goes on with the run of a folder, and prints how it goes. */
final class KilledCardRun {
    private KilledCardRun() {}

    public static void main(String[] words) {
        Path run = Path.of(words[0]);
        boolean resume = Files.exists(run.resolve("settings.txt"));
        System.out.println("ready");
        new TrainerRun(
                        ToyRun.request(run, resume ? null : Path.of(words[1]), resume),
                        CudaTrainer.DEVICE,
                        PlainAccelerator::new,
                        System::nanoTime,
                        System.out::println,
                        () -> false)
                .train();
    }
}
