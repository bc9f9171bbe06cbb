package org.pipwright.cli.command;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.engine.drill.Candidate;
import org.pipwright.engine.drill.DrillSettings;
import org.pipwright.engine.drill.SelectionSettings;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.text.Excerpt;
import org.pipwright.models.ModelCatalog;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Where the exercises of a drill come from: games of its own, records, or a file of positions. */
final class DrillSources {
    private static final List<String> OF_OWN_GAMES = List.of("--weaker", "--seed", "--most-games");

    private static final List<String> OF_RECORDS = List.of("--player", "--grade");

    private static final List<String> OF_SEARCHES = List.of("--count", "--cost", "--margin", "--apart");

    @Option(
            names = "--from",
            paramLabel = "FILE",
            arity = "1..*",
            description = "Take the mistakes of recorded games, one record or more, instead of games of its own: the"
                    + " costliest first, of any theme unless one is given. Name the theme before this option.")
    private List<String> from = new ArrayList<>();

    @Option(names = "--player", paramLabel = "NAME", description = "With --from: only the mistakes of this player.")
    private String player;

    @Option(
            names = "--grade",
            paramLabel = "GRADE",
            description = "With --from: mistakes of this grade or worse, thin, costly or heavy, instead of --cost.")
    private String grade;

    @Option(
            names = "--positions",
            paramLabel = "FILE",
            description = "Ask about the positions of a file instead, all of them in their order, one a line as in"
                    + " batches: with a roll behind it which play is best, without one whether to double for money.")
    private String positions;

    @Option(
            names = "--weaker",
            paramLabel = "PLAYER",
            defaultValue = "builder",
            description =
                    "Whose mistakes to look for in games of its own: a net by name or file, with its lookahead as in"
                            + " fifth@0, or one of random, pips, racer, hitter, builder, waiter, who judge the cube by the pip counts"
                            + " alone. Default: builder.")
    private String weaker;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec command;

    /** Reads what there is to read; fails if it is no good or the options do not go together. */
    DrillSearch search(DrillOptions options, Console console) {
        if (positions != null) {
            return positions(options, console);
        }
        if (!from.isEmpty()) {
            return records(options, console);
        }
        refuse(OF_RECORDS, "is for mistakes of records: give those with --from");
        DrillSettings settings = options.settings();
        Contestant other = Contestant.read(weaker, ModelCatalog.shipped(), 0);
        return OwnGamesSearch.of(settings, other);
    }

    private DrillSearch records(DrillOptions options, Console console) {
        refuse(OF_OWN_GAMES, "is for games of the drill's own: leave it out with --from");
        Optional<String> name = Optional.ofNullable(player);
        SelectionSettings settings = options.mistakes(Optional.ofNullable(grade).map(DrillSources::grade));
        return RecordsSearch.of(RecordsSearch.read(from, name), name, settings, console.err());
    }

    private DrillSearch positions(DrillOptions options, Console console) {
        if (!from.isEmpty()) {
            throw new UserError("--positions and --from both say where exercises come from: give one of them");
        }
        String all = "does nothing with --positions, which asks about all positions of a file: leave it out";
        refuse(OF_OWN_GAMES, all);
        refuse(OF_RECORDS, all);
        refuse(OF_SEARCHES, all);
        options.refuseTheme();
        List<Candidate> candidates = PositionsSearch.read(positions, DrillOptions.MAX, console);
        SelectionSettings settings = options.all(candidates.size());
        return PositionsSearch.of(positions, candidates, settings);
    }

    private void refuse(List<String> options, String why) {
        for (String option : options) {
            if (command.commandLine().getParseResult().hasMatchedOption(option)) {
                throw new UserError(option + " " + why);
            }
        }
    }

    private static Grade grade(String word) {
        return Arrays.stream(Grade.values())
                .filter(grade -> grade != Grade.FINE && grade.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new UserError("--grade is '" + Excerpt.of(word) + "': use "
                        + Arrays.stream(Grade.values()).skip(1).map(Grade::word).collect(Collectors.joining(", "))));
    }
}
