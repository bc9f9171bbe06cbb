package org.pipwright.bench.strength;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.LookaheadOption;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.SeedOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Prints a net's first plays beside those that printed sources name, and says which differ. */
@Command(name = "openings", description = "Prints a net's first plays beside those that printed sources name.")
public final class OpeningsCommand extends BenchCommand {
    @Mixin
    private NetOption net;

    @Mixin
    private LookaheadOption lookahead;

    @Option(names = "--trials", paramLabel = "N", description = "Games of a rollout of each play; 0: none.")
    @Within(min = 0, max = 10_000_000)
    private int trials = 0;

    @Mixin
    private SeedOption seed;

    @Mixin
    private ThreadsOption threadsOption;

    @Override
    protected void run() throws IOException {
        int threads = threadsOption.count();
        Knowledge knowledge = Knowledge.of(net.load());
        try (Judge judge = new Judge(knowledge, threads)) {
            if (trials == 0) {
                print(OpeningTable.searched(judge, lookahead.rolls()));
                return;
            }
            RolloutSettings settings = RolloutSettings.DEFAULT
                    .withTrials(trials)
                    .withLookahead(lookahead.rolls())
                    .withSeed(seed.value());
            try (Rollouts rollouts = new Rollouts(knowledge::judgement, settings, threads)) {
                print(OpeningTable.rolledOut(judge, rollouts));
            }
        }
    }

    private void print(List<OpeningLine> lines) {
        for (OpeningLine line : lines) {
            out().printf(
                            Locale.ROOT,
                            "%s  %-8s %-20s %+.4f%s  named: %s%s%n",
                            line.opening().roll(),
                            line.verdict(),
                            line.chosen(),
                            line.equity(),
                            plusMinus(line.error()),
                            line.named(),
                            line.opening().isBest(line.chosen())
                                    ? ""
                                    : String.format(
                                            Locale.ROOT, " at %+.4f%s", line.cost(), plusMinus(line.costError())));
        }
        out().println(OpeningLine.agreeing(lines) + " of " + lines.size() + " named best or close");
    }

    private static String plusMinus(OptionalDouble error) {
        return error.isPresent() ? String.format(Locale.ROOT, " ± %.4f", error.getAsDouble()) : "";
    }
}
