package org.pipwright.bench.signature;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rollout.RolloutSettings;

/**
 * Hashes of what a model answers to fixed questions: every play of every roll without lookahead; then each kind of question
 * at lookahead 0 to 2, without the cube, for money and in a match, in contact and in races. So a change of behaviour shows,
 * and where. The plain kernel adds in a fixed order, and Java's floating point is the same everywhere, so every machine
 * gets the same hashes; the vector kernel may round a number the other way.
 */
final class Signature {
    private static final int DEEPEST = 2;

    /** Rolls after which games are truncated, by lookahead. */
    private static final int[] TRUNCATION = {12, 3, 1};

    private final Answers answers;
    private final Map<String, Supplier<List<String>>> parts = new LinkedHashMap<>();

    Signature(Model model) {
        answers = new Answers(model);
        parts.put("plays", () -> new AllPlays(model).lines());
        for (int lookahead = 0; lookahead <= DEEPEST; lookahead++) {
            ask(lookahead, "contact", Fixed.contact(lookahead));
            ask(lookahead, "races", Fixed.races(lookahead));
        }
        for (int lookahead = 0; lookahead <= DEEPEST; lookahead++) {
            // Truncated, or a game at lookahead 1 would take minutes.
            playOut(
                    lookahead,
                    RolloutSettings.DEFAULT
                            .withTrials(RolloutSettings.ROUND)
                            .withLookahead(lookahead)
                            .withTruncation(TRUNCATION[lookahead]));
        }
        for (int lookahead = 0; lookahead <= DEEPEST; lookahead++) {
            int deep = lookahead;
            parts.put("review cubeless " + deep, () -> answers.review(Fixed.cubelessRecord(), deep));
            parts.put("review money " + deep, () -> answers.review(Fixed.record(false), deep));
            parts.put("review match " + deep, () -> answers.review(Fixed.record(true), deep));
        }
    }

    private void ask(int lookahead, String where, List<Position> positions) {
        String end = " " + where + " " + lookahead;
        parts.put("rank cubeless" + end, () -> answers.rank(positions, lookahead));
        parts.put("odds cubeless" + end, () -> answers.odds(positions, lookahead));
        for (Setting setting : Setting.ALL) {
            parts.put("rank " + setting.name() + end, () -> answers.rank(positions, setting, lookahead));
            parts.put("cube " + setting.name() + end, () -> answers.cube(positions, setting, lookahead));
        }
    }

    private void playOut(int lookahead, RolloutSettings settings) {
        Position from = Fixed.contact(0).get(1);
        parts.put("rollout cubeless " + lookahead, () -> answers.rollout(from, settings));
        for (Setting setting : Setting.ALL) {
            parts.put("rollout " + setting.name() + " " + lookahead, () -> answers.rollout(from, setting, settings));
        }
    }

    /** The names of the parts, in order. */
    List<String> names() {
        return List.copyOf(parts.keySet());
    }

    /** What is hashed of a part. */
    List<String> lines(String part) {
        return parts.get(part).get();
    }

    /** The hash of each part, in order: SHA-256 over its lines, the first 16 hex digits. */
    Map<String, String> hashes() {
        Map<String, String> hashes = new LinkedHashMap<>();
        parts.keySet().forEach(part -> hashes.put(part, hash(lines(part))));
        return hashes;
    }

    /** The hash of several. */
    static String hash(List<String> lines) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            lines.forEach(line -> digest.update((line + "\n").getBytes(StandardCharsets.UTF_8)));
            return HexFormat.of().formatHex(digest.digest(), 0, 8);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
