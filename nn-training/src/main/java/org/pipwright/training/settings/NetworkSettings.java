package org.pipwright.training.settings;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.pipwright.engine.features.FeatureSet;

/**
 * The shape of the nets, and what they begin with.
 *
 * @param start model file to begin with; empty for random weights
 * @param contactFeatures input of the network for positions with contact
 * @param contactHidden sizes of its hidden layers
 * @param raceHidden sizes of the hidden layers of the network for races
 */
public record NetworkSettings(
        Optional<Path> start, FeatureSet contactFeatures, List<Integer> contactHidden, List<Integer> raceHidden) {}
