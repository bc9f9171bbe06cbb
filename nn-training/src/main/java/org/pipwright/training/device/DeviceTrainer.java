package org.pipwright.training.device;

import java.nio.file.Path;
import java.util.List;
import java.util.ServiceLoader;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.pipwright.training.settings.InvalidSettingsException;

/**
 * Trains nets on a device. Found by {@link ServiceLoader}, since the libraries it needs are not on every class path.
 */
public interface DeviceTrainer {
    /**
     * Which device it is for.
     *
     * @return the word that asks for it, such as {@code cuda}
     */
    String device();

    /**
     * The settings a run would have.
     *
     * @param request what was asked
     * @return the settings file, with comments
     * @throws InvalidSettingsException if they cannot be used
     */
    String settings(DeviceRequest request);

    /**
     * Trains to the end, or until told to stop; everything is written by then.
     *
     * @param request what was asked
     * @param say told how it goes, a line at a time
     * @param stop asked again and again whether to stop early
     * @return the model files of the run, the strongest net's first
     * @throws InvalidSettingsException if the settings cannot be used
     * @throws org.pipwright.training.run.InvalidRunException if the folder cannot be used
     * @throws MissingDeviceException if there is no such device, or what it needs is not installed
     * @throws org.pipwright.engine.network.InvalidModelException if a net that the settings name cannot be read
     */
    List<Path> train(DeviceRequest request, Consumer<String> say, BooleanSupplier stop);

    /**
     * The trainer for a device.
     *
     * @param device the word that asks for it
     * @return its trainer
     * @throws MissingDeviceException if none is on the class path
     */
    static DeviceTrainer of(String device) {
        return ServiceLoader.load(DeviceTrainer.class).stream()
                .map(ServiceLoader.Provider::get)
                .filter(trainer -> trainer.device().equals(device))
                .findFirst()
                .orElseThrow(() -> new MissingDeviceException("the trainer for --device " + device
                        + " is not on the class path: the script pipwright brings it"));
    }
}
