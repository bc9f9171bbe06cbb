package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.Nets;
import org.pipwright.bench.SeedOption;
import org.pipwright.bench.ThreadsOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.rollout.ActionStanding;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Draws decisions about the cube and plays their actions out; goes on where an earlier run was stopped. */
@Command(
        name = "cube-reference",
        description = "Draws cube decisions and plays their actions out; resumes where it was stopped.")
public final class CubeReferenceCommand extends BenchCommand {
    /** Formulas that play too; {@code random} and {@code pips} come to no position that anybody meets. */
    private static final List<String> FORMULAS = List.of("racer", "hitter", "builder", "waiter");

    @Option(names = "--out", paramLabel = "FILE", required = true, description = "The file to write or resume.")
    private Path file;

    @Mixin
    private NetOption net;

    @Option(
            names = "--nets",
            split = ",",
            paramLabel = "NAMES",
            description = "Nets that play, separated by commas (default: swift,fifth); fixed formulas play too.")
    private List<String> nets = List.of("swift", "fifth");

    @Option(
            names = "--each",
            paramLabel = "N",
            description = "Decisions of each kind of position (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 100_000)
    private int each = 40;

    @Option(names = "--trials", paramLabel = "N", description = "Games for an action (default: ${DEFAULT-VALUE}).")
    @Within(min = 2, max = 1_000_000)
    private int trials = 144;

    @Mixin
    private SeedOption seed;

    @Mixin
    private ThreadsOption threads;

    @Override
    protected void run() throws IOException {
        Model model = net.load();
        List<Entrant> entrants = SampleCommand.entrants(nets, FORMULAS);
        CubeReferenceHeader header = new CubeReferenceHeader(
                CubeReferenceHeader.KIND,
                entrants.stream().map(Entrant::name).collect(Collectors.toList()),
                net.name(),
                model.notes().get(ModelFile.SHA256),
                seed.value(),
                each,
                CubeSampler.WITHIN,
                trials);
        Knowledge knowledge = Nets.withTables(model, threads.count());
        try (var out = new ResumableLines<>(file, header, CubeReference.class, CubeReference::id)) {
            // Those at the same place of each regime follow each other: a run that is stopped has some of every one.
            List<CubeDecision> left = decisions(entrants, knowledge).stream()
                    .filter(decision -> !out.has(decision.id()))
                    .sorted(Comparator.comparingInt(decision -> Math.floorMod(decision.id() - 1, each)))
                    .collect(Collectors.toList());
            for (int i = 0; i < left.size(); i++) {
                out.add(played(left.get(i), knowledge));
                System.err.println((i + 1) + " of " + left.size());
            }
            out().println(out.sort() + " references in " + file);
        }
    }

    private List<CubeDecision> decisions(List<Entrant> entrants, Knowledge knowledge) {
        try (Judge judge = new Judge(knowledge, 1)) {
            return new CubeSampler(entrants, judge, seed.value(), each).sample(SampleCommand.MAX_GAMES);
        }
    }

    private CubeReference played(CubeDecision decision, Knowledge knowledge) {
        Question question = decision.question();
        RolloutSettings settings = RolloutSettings.DEFAULT.withTrials(trials).withSeed(seed.value() + decision.id());
        try (Rollouts rollouts = new Rollouts(knowledge::judgement, knowledge::terms, settings, threads.count())) {
            RolloutReport report = rollouts.actions(
                    question.position(), question.cube(), question.stakes(), WorkFile.NONE, RolloutListener.NONE);
            CubeValues values = report.actions().orElseThrow().values();
            return new CubeReference(
                    decision,
                    report.trials(),
                    Referee.rounded(knowledge.terms(question.stakes()).point(question.cube())),
                    Referee.rounded(values.noDouble()),
                    Referee.rounded(report.of(ActionStanding.ROLL).value().standardError()),
                    Referee.rounded(values.doubleTake()),
                    Referee.rounded(report.of(ActionStanding.TAKE).value().standardError()),
                    Referee.rounded(values.doublePass()));
        }
    }
}
