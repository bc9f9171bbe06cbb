package org.pipwright.cli.command;

import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import org.pipwright.cli.batch.Batch;
import org.pipwright.cli.batch.Lines;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.QuestionTrade;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.search.LookaheadSettings;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How far a command looks ahead, and with how many threads. */
final class SearchOptions {
    private static final double MAX_SECONDS = 86_400;

    @Option(
            names = "--lookahead",
            paramLabel = "N",
            description =
                    "Average over N future rolls, best replies by both sides: 0 (the default) is the net itself, 1"
                            + " the opponent's next roll, up to 6. Plays that fall behind are looked at less deeply.")
    private Integer lookahead;

    @Option(
            names = "--seconds",
            paramLabel = "S",
            description = "Instead: look further and further ahead until the time is up.")
    private Double seconds;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Threads to use; answers do not depend on it. Default: one for each core.")
    private Integer threads;

    @Option(names = "--stats", description = "Report on standard error how much was searched and how fast.")
    private boolean stats;

    @Mixin
    private RacesOption races;

    @Mixin
    private TablesOption tables;

    @Mixin
    private ClusterOption cluster;

    private long began;

    boolean stats() {
        return stats;
    }

    /** Refuses the options of a search where there is none. */
    void refuse(String instead) {
        if (lookahead != null || seconds != null || stats) {
            throw new UserError((lookahead != null ? "--lookahead" : seconds != null ? "--seconds" : "--stats")
                    + " is about a search, but " + instead);
        }
    }

    int lookahead() {
        int wanted = lookahead == null ? 0 : lookahead;
        if (wanted < 0 || wanted > LookaheadSettings.MAX) {
            throw new UserError("--lookahead is " + wanted + ": use 0 to " + LookaheadSettings.MAX);
        }
        return wanted;
    }

    Optional<Duration> time() {
        if (seconds == null) {
            return Optional.empty();
        }
        if (lookahead != null) {
            throw new UserError("--seconds and --lookahead are two ways to say how far to look: give one of them");
        }
        if (!(seconds > 0 && seconds <= MAX_SECONDS)) {
            throw new UserError("--seconds is " + seconds + ": use more than 0 and at most " + (int) MAX_SECONDS);
        }
        return Optional.of(Duration.ofNanos((long) (seconds * 1e9)));
    }

    int threads() {
        return Threads.checked(threads);
    }

    private EndgameTables tables(Console console) {
        return tables.standard(threads(), console);
    }

    /** How hard to think. */
    Effort effort() {
        return races.on(time().map(Effort::within).orElseGet(() -> Effort.lookahead(lookahead())));
    }

    /** What a net and the tables know. */
    Knowledge knowledge(Model model, Console console) {
        return Knowledge.of(model).with(tables(console));
    }

    Judge judge(Knowledge knowledge) {
        began = System.nanoTime();
        return new Judge(knowledge, threads());
    }

    /** Has a batch answered, here or on a cluster; {@code piece} is how many lines without lookahead are nothing to speak of. */
    int batch(
            PositionsArgument positions, boolean rolls, Lines lines, Knowledge knowledge, int piece, Console console) {
        Effort effort = effort();
        int some = effort.lookahead() == 0 ? piece : 1;
        if (!cluster.given()) {
            Batch batch = Batch.here(rolls, lines, () -> new Judge(knowledge, 1), threads(), effort, some);
            return positions.answer(batch, console, stats);
        }
        try (Workforce workforce = cluster.open(console)) {
            QuestionTrade trade = new QuestionTrade(workforce.share(knowledge.portable()), effort);
            return positions.answer(Batch.elsewhere(rolls, lines, workforce, trade, some), console, stats);
        }
    }

    /** Refuses a cluster for a single question, which this machine's threads answer sooner. */
    void refuseCluster() {
        if (cluster.given()) {
            throw new UserError("--cluster is for many positions: give --batch, or leave it out");
        }
    }

    /** After a search: what it took, if asked for. */
    void tell(Judge judge, Console console) {
        if (!stats) {
            return;
        }
        double took = (System.nanoTime() - began) / 1e9;
        long valued = judge.evaluations();
        console.err()
                .println(String.format(
                        Locale.ROOT,
                        "%,d positions valued in %.3f s, %,.0f a second; %.1f %% of look-ups found in memory",
                        valued,
                        took,
                        valued / took,
                        100 * judge.hitRate()));
    }
}
