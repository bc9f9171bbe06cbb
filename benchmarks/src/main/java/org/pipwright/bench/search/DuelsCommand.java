package org.pipwright.bench.search;

import java.lang.management.ManagementFactory;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongUnaryOperator;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.duel.Contest;
import org.pipwright.engine.duel.Duel;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.network.Model;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Prints how many games a second duels play, without the cube, for money and in matches, by all cores. */
@Command(name = "duels", description = "Games a second of duels: without the cube, for money, in matches.")
public final class DuelsCommand extends BenchCommand {
    private static final int LENGTH = 7;

    @Mixin
    private NetOption net;

    @Option(
            names = "--games",
            paramLabel = "N",
            description = "Games of each kind of duel (default: ${DEFAULT-VALUE}).")
    @Within(min = 2, max = 100_000_000)
    private int games = 10_000;

    @Mixin
    private ThreadsOption threadsOption;

    @Override
    protected void run() {
        Model model = net.load();
        int pairs = games / 2;
        int threads = threadsOption.count();
        out().printf(Locale.ROOT, "Net %s, %s, lookahead 0, %d threads.%n%n", net.name(), model.shape(), threads);
        out().println("| duel | games | games/s | games a CPU second |");
        out().println("| --- | ---: | ---: | ---: |");
        row("without the cube", seed -> games(model, Contest.Cubeless.FULL_GAMES, pairs, seed, threads));
        row("money", seed -> games(model, new Contest.Money(MoneyStakes.USUAL), pairs, seed, threads));
        // A match to 7 has some 6 games.
        Contest match = new Contest.Match(LENGTH, ShippedMatchTable.load());
        row("matches to " + LENGTH, seed -> games(model, match, Math.max(1, pairs / 6), seed, threads));
    }

    /** Games of a duel of a net against itself. */
    static long games(Model model, Contest contest, int pairs, long seed, int threads) {
        Entrant side = Entrant.ofModel("net", model, 0);
        DuelSettings settings = new DuelSettings(contest, pairs, seed, false, Optional.empty());
        return new Duel(side, side, settings, tally -> {}).run(threads).games();
    }

    /** Plays once to warm up and once more with other dice. */
    private void row(String name, LongUnaryOperator duel) {
        duel.applyAsLong(1);
        long cpu = cpu();
        long began = System.nanoTime();
        long games = duel.applyAsLong(2);
        double passed = (System.nanoTime() - began) / 1e9;
        double spent = (cpu() - cpu) / 1e9;
        out().printf(Locale.ROOT, "| %s | %,d | %,.0f | %,.0f |%n", name, games, games / passed, games / spent);
    }

    private static long cpu() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }
}
