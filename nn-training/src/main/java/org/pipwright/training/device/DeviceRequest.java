package org.pipwright.training.device;

import java.nio.file.Path;
import java.util.Optional;
import org.pipwright.training.report.ReportPage;

/**
 * What was asked of a run on a device.
 *
 * @param folder folder of the run; empty if only its settings are asked for
 * @param preset name of the preset that the settings begin with
 * @param settings file with all other settings
 * @param seed seed of everything random
 * @param minutes minutes to train in all
 * @param resume whether to go on with the run in the folder
 * @param threads threads of this machine to use, at least 1
 * @param page makes the report that is kept in the folder
 */
public record DeviceRequest(
        Optional<Path> folder,
        Optional<String> preset,
        Optional<Path> settings,
        Optional<Long> seed,
        Optional<Double> minutes,
        boolean resume,
        int threads,
        ReportPage page) {}
