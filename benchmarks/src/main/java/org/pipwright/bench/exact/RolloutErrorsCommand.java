package org.pipwright.bench.exact;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.SeedOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rollout.Estimate;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.search.Judgement;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * Holds the errors that rollouts print against those they make: short races, whose values are known, are played out by exact
 * play without variance reduction, where the spread of the first two throws counts most.
 */
@Command(
        name = "rollout-errors",
        description = "Errors that rollouts print beside those they make, in short races without variance reduction.")
public final class RolloutErrorsCommand extends BenchCommand {
    private static final int POINTS = 6;

    /** Closer to a sure result, errors hang on a game or two in a thousand. */
    private static final double OPEN = 0.98;

    @Option(
            names = "--games",
            paramLabel = "N",
            split = ",",
            description = "Games a rollout, in full rounds of 36 (default: ${DEFAULT-VALUE}).")
    private List<Integer> games = List.of(36, 72, 108, 144, 216, 288, 648, 1296);

    @Option(
            names = "--checkers",
            paramLabel = "N",
            description = "Most checkers a side, on the points 1 to 6 (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 6)
    private int checkers = 3;

    @Option(
            names = "--races",
            paramLabel = "N",
            description = "Races, each rolled out once with dice of its own (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 1_000_000)
    private int races = 1000;

    @Mixin
    private SeedOption seedOption;

    @Mixin
    private ThreadsOption threadsOption;

    @Override
    protected void run() {
        SideIndex sides = new SideIndex(POINTS, checkers);
        TwoSidedTable table = TwoSidedTable.build(sides, threadsOption.count(), TableProgress.NONE);
        out().println("| games | mean of squares of errors, in printed ones | squares of errors over printed |"
                + " beyond 3 | largest | printed as 0, but wrong |");
        out().println("| ---: | ---: | ---: | ---: | ---: | ---: |");
        for (int each : games) {
            out().println("| " + each + " | " + held(table, each) + " |");
            out().flush();
        }
    }

    private PrintedErrors held(TwoSidedTable table, int number) {
        SideIndex sides = table.index();
        PositionEvaluator exact = (planes, at, out, outAt) -> {
            double win = table.value(sides.of(planes, at), sides.of(planes, at + Planes.SIDE))
                    .win();
            Arrays.fill(out, outAt, outAt + Outcomes.COUNT, 0);
            out[outAt] = (float) win;
            out[outAt + Outcomes.COUNT / 2] = (float) (1 - win);
        };
        PrintedErrors errors = new PrintedErrors();
        SplittableRandom random = new SplittableRandom(seedOption.value());
        RolloutSettings settings = RolloutSettings.DEFAULT.withTrials(number).withLuckAdjusted(false);
        while (errors.count() < races) {
            Position race = RandomRace.of(random, POINTS, 1, checkers);
            double equity = exact.evaluate(race).equity();
            long seed = random.nextLong();
            if (Math.abs(equity) > OPEN) {
                continue;
            }
            try (Rollouts rollouts =
                    new Rollouts(() -> Judgement.by(exact), settings.withSeed(seed), threadsOption.count())) {
                Estimate said = rollouts.odds(race, WorkFile.NONE, RolloutListener.NONE)
                        .of(0)
                        .value();
                errors.add(said, equity);
            }
        }
        return errors;
    }

    /** Errors in units of those that were printed. */
    static final class PrintedErrors {
        /** Chances pass through float. */
        private static final double ROUNDING = 1e-6;

        private static final double FAR = 3;

        private int count;
        private int judged;
        private int beyond;
        private int wrong;
        private double largest;
        private double units;
        private double squares;
        private double variances;

        void add(Estimate said, double truth) {
            double off = Math.abs(said.mean() - truth);
            count++;
            squares += off * off;
            variances += said.standardError() * said.standardError();
            if (said.standardError() < ROUNDING) {
                wrong += off > ROUNDING ? 1 : 0;
                return;
            }
            judged++;
            double z = off / said.standardError();
            units += z * z;
            beyond += z > FAR ? 1 : 0;
            largest = Math.max(largest, z);
        }

        int count() {
            return count;
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%.2f | %.2f | %.1f %% | %.1f | %d",
                    units / judged,
                    squares / variances,
                    100.0 * beyond / judged,
                    largest,
                    wrong);
        }
    }
}
