package org.pipwright.cli.desk;

import java.net.InetSocketAddress;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.pipwright.engine.drill.Candidate;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.record.GameRecord;

/**
 * What a desk needs.
 *
 * @param port the port to listen on, 0 for any that is free
 * @param nets names of the nets that can sit at a table, the one that answers questions first
 * @param knowledge what a net of such a name knows; asked when it first sits down
 * @param folder where records are kept
 * @param threads threads for the nets, at least 1
 * @param opened records that the user opened, by their files; each has a turn
 * @param positions what files of positions that the user opened ask, by their names
 * @param log where it is noted what was practised
 * @param guests where devices of the class may come in to look and to guess; empty if nobody may
 */
public record DeskSetup(
        int port,
        List<String> nets,
        Function<String, Knowledge> knowledge,
        Path folder,
        int threads,
        Map<String, GameRecord> opened,
        Map<String, List<Candidate>> positions,
        Path log,
        Optional<InetSocketAddress> guests) {
    /** Deepest lookahead at a table: a play should not take minutes. */
    static final int MAX_LOOKAHEAD = 2;

    /** Name of the log of practice, unless the user gives another. */
    public static final String LOG = "practice.log";

    /**
     * Keeps the names.
     *
     * @param port the port to listen on
     * @param nets names of the nets
     * @param knowledge what they know
     * @param folder where records are kept
     * @param threads threads for the nets
     * @param opened records
     * @param positions files of positions
     * @param log log of practice
     * @param guests where devices of the class may come in
     */
    public DeskSetup {
        nets = List.copyOf(nets);
        opened = new LinkedHashMap<>(opened);
        positions = new LinkedHashMap<>(positions);
    }

    /**
     * A desk on which nothing was opened; its log is {@code practice.log} among the records.
     *
     * @param port the port to listen on, 0 for any that is free
     * @param nets names of the nets
     * @param knowledge what they know
     * @param folder where records are kept
     * @param threads threads for the nets, at least 1
     */
    public DeskSetup(int port, List<String> nets, Function<String, Knowledge> knowledge, Path folder, int threads) {
        this(port, nets, knowledge, folder, threads, Map.of(), Map.of(), folder.resolve(LOG), Optional.empty());
    }
}
