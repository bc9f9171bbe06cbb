package org.pipwright.bench.search;

import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongUnaryOperator;
import java.util.function.Supplier;
import org.pipwright.bench.Main;
import org.pipwright.bench.Options;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.duel.Contest;
import org.pipwright.engine.duel.CubefulDuel;
import org.pipwright.engine.duel.CubefulEntrant;
import org.pipwright.engine.duel.CubefulSettings;
import org.pipwright.engine.duel.Duel;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.network.Model;
import org.pipwright.models.ModelCatalog;

/** Prints how many games a second duels play, without the cube, for money and in matches, by all cores. */
public final class DuelsMain {
    private static final int LENGTH = 7;

    private DuelsMain() {}

    public static void main(String[] args) {
        Main.run(args, DuelsMain::run);
    }

    private static void run(List<String> args) {
        Options options = new Options(args, Set.of("--net", "--games", "--threads"), Set.of());
        String net = options.text("--net").orElse(ModelCatalog.shipped().defaultName());
        Model model = ModelCatalog.shipped().load(net);
        int pairs = options.number("--games", 10_000, 2, 100_000_000) / 2;
        int threads = options.number("--threads", Runtime.getRuntime().availableProcessors(), 1, 1024);
        System.out.printf(Locale.ROOT, "Net %s, %s, lookahead 0, %d threads.%n%n", net, model.shape(), threads);
        System.out.println("| duel | games | games/s | games a CPU second |");
        System.out.println("| --- | ---: | ---: | ---: |");
        row("without the cube", seed -> cubeless(model, pairs, seed, threads));
        row("money", seed -> cubeful(model, new Contest.Money(MoneyStakes.USUAL), pairs, seed, threads));
        // A match to 7 has some 6 games.
        Contest match = new Contest.Match(LENGTH, ShippedMatchTable.load());
        row("matches to " + LENGTH, seed -> cubeful(model, match, Math.max(1, pairs / 6), seed, threads));
    }

    /** Games of a duel of a net against itself, without the cube. */
    static long cubeless(Model model, int pairs, long seed, int threads) {
        Entrant side = Entrant.ofModel("net", model, 0);
        return new Duel(side, side, DuelSettings.fullGames(pairs, seed), tally -> {})
                .run(threads)
                .games();
    }

    /** Games of a duel with the cube. */
    static long cubeful(Model model, Contest contest, int pairs, long seed, int threads) {
        Supplier<PositionEvaluator> evaluators = () -> new NetworkEvaluator(model);
        CubefulEntrant side = new CubefulEntrant("net", evaluators, 0);
        CubefulSettings settings = new CubefulSettings(contest, pairs, seed, false, Optional.empty());
        return new CubefulDuel(side, side, settings, tally -> {}).run(threads).games();
    }

    /** Plays once to warm up and once more with other dice. */
    private static void row(String name, LongUnaryOperator duel) {
        duel.applyAsLong(1);
        long cpu = cpu();
        long began = System.nanoTime();
        long games = duel.applyAsLong(2);
        double passed = (System.nanoTime() - began) / 1e9;
        double spent = (cpu() - cpu) / 1e9;
        System.out.printf(Locale.ROOT, "| %s | %,d | %,.0f | %,.0f |%n", name, games, games / passed, games / spent);
    }

    private static long cpu() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }
}
