package org.pipwright.cli.command;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.cli.duel.Interruption;
import org.pipwright.cli.duel.Progress;
import org.pipwright.cli.report.StandingsJson;
import org.pipwright.cli.report.StandingsReport;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.standings.Match;
import org.pipwright.engine.standings.Ratings;
import org.pipwright.engine.standings.Tournament;
import org.pipwright.models.ModelCatalog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Several players to their ratings. */
@Command(
        name = "standings",
        customSynopsis = "pipwright standings PLAYER PLAYER... [options]",
        header = "Rate several players by a round robin of duels.",
        description = {
            "Any two of the players play a duel of 2000 games. The ratings are the numbers whose differences come closest to the results, weighted by"
                    + " their errors (least squares); one player's is 0 by definition. An interrupt (Ctrl-C) ends it with"
                    + " what is known so far."
        },
        footer = {
            "Examples:",
            "  pipwright standings racer hitter builder",
            "  pipwright standings new.safetensors old.safetensors builder --chart standings.svg"
        })
public final class StandingsCommand extends CliCommand {
    private static final long GAMES = 2000;

    @Parameters(
            paramLabel = "PLAYER",
            arity = "1..*",
            description = "A net by name or by the path of its file, with its own lookahead if one follows, as in"
                    + " new.safetensors@1; or one that never changes: random, pips, racer, hitter, builder, waiter.")
    private List<String> names;

    @Mixin
    private GamesOptions games;

    @Option(
            names = "--lookahead",
            paramLabel = "N",
            defaultValue = "0",
            description = "Future rolls that nets average over, unless their names say otherwise. Default: 0.")
    private int lookahead;

    @Option(
            names = "--anchor",
            paramLabel = "PLAYER",
            description = "The player whose rating is 0. Default: the last one.")
    private String anchor;

    @Option(
            names = "--chart",
            paramLabel = "FILE.svg",
            converter = OutputFile.Svg.class,
            description = "Also draw the ratings, as SVG.")
    private Path chart;

    @Mixin
    private ForceOption force;

    @Mixin
    private ClusterOption cluster;

    @Option(names = "--json", description = "Print JSON, in the form that standings.schema.json describes.")
    private boolean json;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public StandingsCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        int threads = games.threads();
        long pairs = games.pairs(GAMES);
        int zero = anchor();
        ModelCatalog catalog = ModelCatalog.shipped();
        List<Contestant> players = names.stream()
                .map(name -> Contestant.read(name, catalog, lookahead))
                .collect(Collectors.toList());
        Tournament tournament = new Tournament(
                players.stream().map(Contestant::entrant).collect(Collectors.toList()),
                pairs,
                games.seed(),
                games.luck());
        Progress progress = Progress.of(tournament.games(), console().err());
        try (Workforce workforce = cluster.openIfGiven(console())) {
            Interruption.during(
                    () -> report(
                            players,
                            zero,
                            progress.during(() -> workforce == null
                                    ? tournament.run(threads, progress::reached)
                                    : tournament.run(workforce, progress::reached))),
                    tournament::stop);
        }
        return 0;
    }

    private int anchor() {
        if (names.size() < 2) {
            throw new UserError("standings of one player say nothing: name two or more");
        }
        Set<String> seen = new HashSet<>();
        for (String name : names) {
            if (!seen.add(name)) {
                throw new UserError("'" + name + "' is named twice: name each player once");
            }
        }
        if (anchor != null && !seen.contains(anchor)) {
            throw new UserError("--anchor is '" + anchor + "', which is none of the players");
        }
        return anchor == null ? names.size() - 1 : names.indexOf(anchor);
    }

    private void report(List<Contestant> players, int zero, List<Match> matches) {
        Optional<Ratings> ratings = Ratings.fit(
                players.size(), zero, matches.stream().map(Match::comparison).collect(Collectors.toList()));
        StandingsReport report = new StandingsReport(
                players, zero, games.seed(), matches, ratings, console().unicode() ? "\u00b1" : "+/-");
        if (json) {
            StandingsJson.write(report, out());
        } else {
            report.writeText(out());
        }
        out().flush();
        if (chart != null && ratings.isPresent()) {
            draw(report);
        }
    }

    private void draw(StandingsReport report) {
        OutputFile.write(chart, chartText(report).getBytes(StandardCharsets.UTF_8));
    }

    /** A Java without fonts cannot draw, and says so in many ways. */
    private static String chartText(StandingsReport report) {
        try {
            return report.chart();
        } catch (RuntimeException | Error e) {
            throw new UserError("no chart: this Java has no fonts to label it with; install fontconfig and a font");
        }
    }
}
