package org.pipwright.training.settings;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What the targets of samples are.
 *
 * @param kind where targets come from
 * @param net model file of the net that targets of {@link TargetKind#NET} ask; empty if none is named
 * @param rolloutGames games of a rollout that gives a target
 * @param rolloutTruncation rolls after which they are truncated; 0 to play them out
 */
public record TargetSettings(TargetKind kind, Optional<Path> net, int rolloutGames, int rolloutTruncation) {}
