package org.pipwright.cli.train;

import java.nio.file.Path;
import org.pipwright.engine.bearoff.TableFolder;

/**
 * What was asked of the command {@code train}; null where nothing was said.
 *
 * @param games games to train for in all
 * @param minutes minutes to train for in all
 * @param folder folder of the run
 * @param seed seed of everything random
 * @param preset name of the preset that the settings begin with
 * @param settings file with all other settings
 * @param resume whether to go on with the run in the folder
 * @param threads threads to use
 * @param tables where exact tables are kept
 */
public record TrainRequest(
        Long games,
        Double minutes,
        Path folder,
        Long seed,
        String preset,
        Path settings,
        boolean resume,
        Integer threads,
        TableFolder tables) {}
