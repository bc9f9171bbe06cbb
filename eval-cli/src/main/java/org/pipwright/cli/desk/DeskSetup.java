package org.pipwright.cli.desk;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Function;
import org.pipwright.engine.judge.Knowledge;

/**
 * What a desk needs.
 *
 * @param port the port to listen on, 0 for any that is free
 * @param nets names of the nets that can sit at a table, the one that answers questions first
 * @param knowledge what a net of such a name knows; asked when it first sits down
 * @param folder where records are kept
 * @param threads threads for the nets, at least 1
 */
public record DeskSetup(int port, List<String> nets, Function<String, Knowledge> knowledge, Path folder, int threads) {
    /** Deepest lookahead at a table: a play should not take minutes. */
    static final int MAX_LOOKAHEAD = 2;

    /**
     * Keeps the names.
     *
     * @param port the port to listen on
     * @param nets names of the nets
     * @param knowledge what they know
     * @param folder where records are kept
     * @param threads threads for the nets
     */
    public DeskSetup {
        nets = List.copyOf(nets);
    }
}
