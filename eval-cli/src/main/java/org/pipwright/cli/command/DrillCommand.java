package org.pipwright.cli.command;

import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.drill.DrillProgress;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.cli.duel.Interruption;
import org.pipwright.cli.report.DrillJson;
import org.pipwright.cli.report.DrillReport;
import org.pipwright.cli.report.DrillText;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.Reasoning;
import org.pipwright.cli.report.Reasons;
import org.pipwright.engine.drill.CubeOpinion;
import org.pipwright.engine.drill.Drill;
import org.pipwright.engine.drill.DrillSettings;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.Weaker;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Model;
import org.pipwright.models.ModelCatalog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Theme to exercises with their answers. */
@Command(
        name = "drill",
        customSynopsis = "pipwright drill THEME [options]",
        header = "Make an exercise sheet: positions where a weaker player goes wrong.",
        description = {
            "Plays games and takes from them positions of a theme in which a weaker player's choice gives away a lot and one"
                    + " choice is clearly best. At most one position comes from a game, and no two of a sheet are nearly"
                    + " equal. An interrupt (Ctrl-C) ends the search with what is found so far."
        },
        footer = {
            "Examples:",
            "  pipwright drill hitting --sheet hitting.html --page practice.html",
            "  pipwright drill priming --count 12 --weaker fifth@0 --cost 0.05 --seed 7",
            "  pipwright drill match-scores --json"
        })
public final class DrillCommand extends CliCommand {
    @Mixin
    private DrillOptions options;

    @Option(
            names = "--weaker",
            paramLabel = "PLAYER",
            defaultValue = "builder",
            description = "Whose mistakes to look for: a net by name or file, with its lookahead as in fifth@0, or one"
                    + " of random, pips, racer, hitter, builder, who judge the cube by the pip counts alone."
                    + " Default: builder.")
    private String weaker;

    @Mixin
    private NetOption net;

    @Mixin
    private TablesOption tables;

    @Option(names = "--threads", paramLabel = "N", description = "Number of threads; default: all cores.")
    private Integer threads;

    @Mixin
    private DrillFiles files;

    @Option(names = "--json", description = "Print JSON, in the form that drill.schema.json describes.")
    private boolean json;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public DrillCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        DrillSettings settings = options.settings();
        int crew = Threads.checked(threads);
        Contestant other = Contestant.read(weaker, ModelCatalog.shipped(), 0);
        Model model = net.load();
        Knowledge knowledge = Knowledge.of(model).with(tables.standard(crew, console()));
        DrillProgress progress = new DrillProgress(
                settings.count(),
                Boolean.getBoolean("pipwright.terminal"),
                console().err());
        Drill drill = new Drill(settings, knowledge, weaker(other), progress);
        Interruption.during(
                () -> {
                    List<Exercise> found;
                    try (progress) {
                        found = drill.run(crew);
                    }
                    tellMissing(found.size(), settings.count(), drill.stopped());
                    List<Reasons> reasons = reasons(found, knowledge, settings, crew);
                    report(new DrillReport(settings, NetLabel.of(net.name(), model), other, found, reasons));
                },
                drill::stop);
        return 0;
    }

    private static Weaker weaker(Contestant other) {
        Supplier<CubeOpinion> opinions = other.net().isEmpty()
                ? CubeOpinion::byPips
                : () -> CubeOpinion.of(
                        other.entrant().valuers().orElseThrow().get(),
                        other.net().get().lookahead());
        return new Weaker(other.name(), other.entrant().players(), opinions);
    }

    private static List<Reasons> reasons(
            List<Exercise> exercises, Knowledge knowledge, DrillSettings settings, int threads) {
        try (Judge judge = new Judge(knowledge, threads)) {
            Reasoning reasoning =
                    new Reasoning(judge, settings.lookahead(), settings.simulateRaces(), knowledge.terms());
            return exercises.stream().map(reasoning::of).collect(Collectors.toList());
        }
    }

    private void tellMissing(int found, int wanted, boolean stopped) {
        String why = stopped ? "the search was stopped" : "lower --cost or --margin, or raise --most-games";
        if (found == 0) {
            throw new UserError("no position found: " + why);
        }
        if (found < wanted) {
            console().err().println("only " + found + " of " + wanted + " positions found: " + why);
        }
    }

    private void report(DrillReport report) {
        if (json) {
            DrillJson.write(report, out());
        }
        if (files.wanted()) {
            files.write(report, json ? console().err() : out());
        } else if (!json) {
            DrillText.write(report, console().unicode(), out());
        }
        out().flush();
    }
}
