package org.pipwright.engine.explain;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.Map;

/**
 * How much each trait counts in each stage, in points per game for one more of its unit: a linear fit, each weight held to
 * the sign that common practice gives it, of the differences of equity between plays of the same roll in games of a net with
 * itself. The file says which net, how many pairs of plays, and how much of their differences it explains; {@code
 * benchmarks/run trait-weights} makes it. It serves to choose which of the true facts to say first, never to judge a play.
 */
final class TraitWeights {
    /** The weights that explanations use. */
    static final TraitWeights FITTED = read("trait-weights.csv");

    private final Map<Stage, Map<Trait, Double>> weights;

    private TraitWeights(Map<Stage, Map<Trait, Double>> weights) {
        this.weights = weights;
    }

    private static TraitWeights read(String name) {
        Map<Stage, Map<Trait, Double>> weights = new EnumMap<>(Stage.class);
        for (Stage stage : Stage.values()) {
            weights.put(stage, new EnumMap<>(Trait.class));
        }
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(TraitWeights.class.getResourceAsStream(name), StandardCharsets.US_ASCII))) {
            reader.lines().filter(line -> !line.startsWith("#")).forEach(line -> {
                String[] parts = line.split(",");
                weights.get(Stage.valueOf(parts[0])).put(Trait.valueOf(parts[1]), Double.valueOf(parts[2]));
            });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new TraitWeights(weights);
    }

    /** What one more unit of a trait is worth in a stage, in points per game; 0 where it does not count. */
    double of(Stage stage, Trait trait) {
        return weights.get(stage).getOrDefault(trait, 0.0);
    }
}
