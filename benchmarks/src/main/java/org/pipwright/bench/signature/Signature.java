package org.pipwright.bench.signature;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.pipwright.bench.BenchPositions;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.ranking.PlayRanker;
import org.pipwright.engine.ranking.RankedPlay;
import org.pipwright.engine.roll.Roll;

/**
 * A hash of what a model makes of fixed positions: all plays of all rolls, ranked, with equities to four digits. The plain
 * kernel adds in a fixed order, and Java's floating point is the same everywhere, so every machine gets the same hash; the
 * vector kernel may round an equity the other way.
 */
final class Signature {
    /** Of each list of a thousand, every so many positions. */
    private static final int EVERY = 100;

    private final PlayRanker ranker;

    Signature(Model model) {
        ranker = new PlayRanker(new NetworkEvaluator(model), Depth.STATIC);
    }

    /** The positions it is taken over. */
    static List<Position> positions() {
        return Stream.of(BenchPositions.netPlay(), BenchPositions.randomPlay())
                .flatMap(list -> IntStream.range(0, list.size() / EVERY).mapToObj(i -> list.get(i * EVERY)))
                .collect(Collectors.toList());
    }

    /** One line a play, best first. */
    List<String> lines(Position position, Roll roll) {
        return ranker.rank(position, roll).stream()
                .map(ranked -> position + " " + roll + " " + ranked.play() + " " + rounded(ranked))
                .collect(Collectors.toList());
    }

    private static String rounded(RankedPlay ranked) {
        return String.format(Locale.ROOT, "%.4f", ranked.equity());
    }

    /** SHA-256 over all lines, its first 16 hex digits. */
    String hash() {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (Position position : positions()) {
                for (Roll roll : Roll.all()) {
                    lines(position, roll)
                            .forEach(line -> digest.update((line + "\n").getBytes(StandardCharsets.UTF_8)));
                }
            }
            return HexFormat.of().formatHex(digest.digest(), 0, 8);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
