package org.pipwright.cli.command;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.drill.DrillProgress;
import org.pipwright.cli.duel.Interruption;
import org.pipwright.cli.picture.View;
import org.pipwright.cli.report.DrillJson;
import org.pipwright.cli.report.DrillReport;
import org.pipwright.cli.report.DrillText;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.Reasoning;
import org.pipwright.cli.report.Reasons;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.explain.Motive;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.parallel.Workforce;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Theme to exercises with their answers. */
@Command(
        name = "drill",
        customSynopsis = {
            "pipwright drill THEME [options]",
            "       pipwright drill [THEME] --from FILE... [options]",
            "       pipwright drill --positions FILE [options]"
        },
        header = "Make an exercise sheet: positions where a weaker player goes wrong.",
        description = {
            "Plays games and takes from them positions of a theme in which a weaker player's choice gives away a lot and one"
                    + " choice is clearly best. At most one position comes from a game, and no two of a sheet are nearly"
                    + " equal. With --from the positions are those in which the players of recorded games went wrong; with"
                    + " --positions they are your own. An interrupt (Ctrl-C) ends the search with what is found so far."
        },
        footer = {
            "Examples:",
            "  pipwright drill hitting --sheet hitting.html --page practice.html",
            "  pipwright drill priming --count 12 --weaker fifth@0 --cost 0.05 --seed 7",
            "  pipwright drill race-doubles --hide pips --sheet counting.html",
            "  pipwright drill match-scores --json",
            "  pipwright drill --from monday.txt tuesday.sgf --grade costly --sheet class.html",
            "  pipwright drill hitting --player Mira --from monday.txt",
            "  pipwright drill --positions mine.txt --title \"Lesson 4\" --sheet lesson4.html"
        })
public final class DrillCommand extends CliCommand {
    @Mixin
    private DrillOptions options;

    @Mixin
    private DrillSources sources;

    @Option(names = "--title", paramLabel = "TEXT", description = "Heading of the exercises. Default: the theme.")
    private String title;

    @Mixin
    private NetOption net;

    @Mixin
    private TablesOption tables;

    @Option(names = "--threads", paramLabel = "N", description = "Threads to use. Default: one for each core.")
    private Integer threads;

    @Mixin
    private ClusterOption cluster;

    @Mixin
    private ViewOptions views;

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
        DrillSearch search = sources.search(options, console());
        View view = views.view();
        int crew = Threads.checked(threads);
        Model model = net.load();
        Knowledge knowledge = Knowledge.of(model).with(tables.standard(crew, console()));
        DrillProgress progress = new DrillProgress(
                search.wanted(),
                search.from(),
                Boolean.getBoolean("pipwright.terminal"),
                console().err());
        Interruption.during(
                () -> {
                    List<Exercise> found = found(search, knowledge, progress, crew);
                    tellMissing(found.size(), search, progress.stopped());
                    String heading = title == null ? search.source().title() : title;
                    List<Reasons> reasons = reasons(found, knowledge, search.lookahead(), crew);
                    report(new DrillReport(
                            heading, search.source(), NetLabel.of(net.name(), model), found, reasons, view));
                },
                progress::stop);
        return 0;
    }

    private List<Exercise> found(DrillSearch search, Knowledge knowledge, DrillProgress progress, int threads) {
        try (Workforce workforce = cluster.openIfGiven(console());
                progress) {
            return search.finder().find(knowledge, progress, new Workers(threads, workforce));
        }
    }

    private List<Reasons> reasons(List<Exercise> exercises, Knowledge knowledge, int lookahead, int threads) {
        try (Judge judge = new Judge(knowledge, threads)) {
            Reasoning reasoning = new Reasoning(judge, lookahead, options.simulateRaces(), knowledge.terms());
            Predicate<Motive> about = options.theme()
                    .<Predicate<Motive>>map(theme -> theme::about)
                    .orElse(motive -> true);
            return exercises.stream().map(each -> reasoning.of(each, about)).collect(Collectors.toList());
        }
    }

    private void tellMissing(int found, DrillSearch search, boolean stopped) {
        String why = stopped ? "the search was stopped" : search.advice();
        if (found == 0) {
            throw new UserError("no position found: " + why);
        }
        if (found < search.wanted()) {
            console().err().println("only " + found + " of " + search.wanted() + " positions found: " + why);
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
