package org.pipwright.bench;

import org.pipwright.engine.search.LookaheadSettings;
import picocli.CommandLine.Option;

/** How many rolls are looked ahead. */
public final class LookaheadOption {
    @Option(names = "--lookahead", paramLabel = "N", description = "Rolls to look ahead (default: ${DEFAULT-VALUE}).")
    @Within(min = 0, max = LookaheadSettings.MAX)
    private int rolls = 0;

    /** Their number. */
    public int rolls() {
        return rolls;
    }
}
