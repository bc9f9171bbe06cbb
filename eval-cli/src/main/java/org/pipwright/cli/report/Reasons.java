package org.pipwright.cli.report;

import java.util.List;

/**
 * Why the answer of an exercise is right, in short sentences.
 *
 * @param best about the best play, or about the position where the cube is asked about
 * @param weak about what the weaker player's play lacks and what speaks for it; empty where the cube is asked about
 * @param lesson what the exercise teaches beyond its own position
 */
public record Reasons(List<String> best, List<String> weak, String lesson) {
    /**
     * Copies the sentences.
     *
     * @param best about the best play or the position
     * @param weak about the weaker player's play
     * @param lesson what the exercise teaches
     */
    public Reasons {
        best = List.copyOf(best);
        weak = List.copyOf(weak);
    }
}
