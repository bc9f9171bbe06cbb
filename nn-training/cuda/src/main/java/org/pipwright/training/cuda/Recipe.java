package org.pipwright.training.cuda;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * All that decides a run on a card.
 *
 * @param out folder of the run
 * @param minutes minutes to train in all, copying included
 * @param seed seed of dice, first weights and draws
 * @param deep shape of the network that gives targets
 * @param quick shape of the network that drops results before the deep one judges
 * @param pupils shapes of networks that learn from the same targets
 * @param copied model file whose chances are copied to begin with
 * @param copySeconds seconds of that
 * @param lanes groups of games that take turns on the card
 * @param games games a group
 * @param memory lessons kept to draw from
 * @param uses times a lesson is used on average
 * @param rate highest learning rate
 * @param lambdaFirst lambda of the targets at the beginning
 * @param lambdaLast lambda at the end
 * @param margin equity within which results are kept by the quick network
 * @param rows rows the deep network takes at once
 * @param rival model file to gauge strength against
 * @param gaugeSeconds seconds between two gaugings
 * @param gaugePairs pairs of games of a gauging
 * @param finalPairs pairs of games of the last gauging of each network
 */
record Recipe(
        Path out,
        double minutes,
        long seed,
        ResidualShape deep,
        ResidualShape quick,
        List<ResidualShape> pupils,
        Path copied,
        double copySeconds,
        int lanes,
        int games,
        int memory,
        double uses,
        float rate,
        float lambdaFirst,
        float lambdaLast,
        float margin,
        int rows,
        Path rival,
        double gaugeSeconds,
        int gaugePairs,
        int finalPairs) {

    /** Reads {@code key=value} words. */
    static Recipe of(String... words) {
        java.util.Map<String, String> given = new java.util.HashMap<>();
        for (String word : words) {
            int at = word.indexOf('=');
            if (at < 1) {
                throw new IllegalArgumentException("'" + word + "' is no setting: write key=value");
            }
            given.put(word.substring(0, at), word.substring(at + 1));
        }
        List<ResidualShape> pupils = new ArrayList<>();
        for (String shape : given.getOrDefault("pupils", "").split(",")) {
            if (!shape.isEmpty()) {
                pupils.add(ResidualShape.parse(shape));
            }
        }
        return new Recipe(
                Path.of(given.getOrDefault("out", "run")),
                Double.parseDouble(given.getOrDefault("minutes", "20")),
                Long.parseLong(given.getOrDefault("seed", "1")),
                ResidualShape.parse(given.getOrDefault("deep", "1024x6")),
                ResidualShape.parse(given.getOrDefault("quick", "256x1")),
                List.copyOf(pupils),
                Path.of(given.get("copied")),
                Double.parseDouble(given.getOrDefault("copy.seconds", "25")),
                Integer.parseInt(given.getOrDefault("lanes", "2")),
                Integer.parseInt(given.getOrDefault("games", "8192")),
                Integer.parseInt(given.getOrDefault("memory", "2000000")),
                Double.parseDouble(given.getOrDefault("uses", "4")),
                Float.parseFloat(given.getOrDefault("rate", "0.001")),
                Float.parseFloat(given.getOrDefault("lambda.first", "0.75")),
                Float.parseFloat(given.getOrDefault("lambda.last", "0.4")),
                Float.parseFloat(given.getOrDefault("margin", "0.08")),
                Integer.parseInt(given.getOrDefault("rows", "8192")),
                Path.of(given.get("rival")),
                Double.parseDouble(given.getOrDefault("gauge.seconds", "60")),
                Integer.parseInt(given.getOrDefault("gauge.pairs", "8192")),
                Integer.parseInt(given.getOrDefault("final.pairs", "100000")));
    }
}
