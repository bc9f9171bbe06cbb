package org.pipwright.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.pipwright.cli.command.CompletionCommand;
import org.pipwright.cli.command.CountCommand;
import org.pipwright.cli.command.CubeCommand;
import org.pipwright.cli.command.DeskCommand;
import org.pipwright.cli.command.DrawCommand;
import org.pipwright.cli.command.DrillCommand;
import org.pipwright.cli.command.DuelCommand;
import org.pipwright.cli.command.HelpCommand;
import org.pipwright.cli.command.NetCommand;
import org.pipwright.cli.command.OddsCommand;
import org.pipwright.cli.command.RankCommand;
import org.pipwright.cli.command.RecordCommand;
import org.pipwright.cli.command.ReviewCommand;
import org.pipwright.cli.command.RolloutCommand;
import org.pipwright.cli.command.StandingsCommand;
import org.pipwright.cli.command.TablesCommand;
import org.pipwright.cli.command.TrainCommand;
import picocli.CommandLine;
import picocli.CommandLine.IFactory;

/**
 * All commands by name, in the order of the help. A command is a class of {@code org.pipwright.cli.command} with a
 * constructor that takes the console.
 *
 * <p>picocli looks at every class it is given, so a run that names its command gives it that one only. A class that
 * needs a large library names it inside its methods, not in fields or signatures: then not even the help loads it.
 */
final class Commands {
    static final Map<String, Class<?>> ALL = all();

    /** Commands that have something to say about the others. */
    private static final Set<String> ABOUT_ALL = Set.of("help", "completion");

    /** What is asked of none. */
    private static final Set<String> VERSION = Set.of("-V", "--version");

    private Commands() {}

    private static Map<String, Class<?>> all() {
        Map<String, Class<?>> all = new LinkedHashMap<>();
        all.put("desk", DeskCommand.class);
        all.put("rank", RankCommand.class);
        all.put("odds", OddsCommand.class);
        all.put("cube", CubeCommand.class);
        all.put("rollout", RolloutCommand.class);
        all.put("count", CountCommand.class);
        all.put("draw", DrawCommand.class);
        all.put("record", RecordCommand.class);
        all.put("review", ReviewCommand.class);
        all.put("drill", DrillCommand.class);
        all.put("train", TrainCommand.class);
        all.put("duel", DuelCommand.class);
        all.put("standings", StandingsCommand.class);
        all.put("tables", TablesCommand.class);
        all.put("net", NetCommand.class);
        all.put("completion", CompletionCommand.class);
        all.put("help", HelpCommand.class);
        return all;
    }

    /**
     * Adds the command that the arguments name; all of them if they name none, for the help, for suggestions and for shells;
     * none for the version.
     */
    static void addTo(CommandLine root, Map<String, Class<?>> commands, IFactory factory, String... args) {
        Class<?> named = args.length > 0 && !ABOUT_ALL.contains(args[0]) ? commands.get(args[0]) : null;
        if (named != null) {
            root.addSubcommand(args[0], new CommandLine(named, factory));
        } else if (args.length != 1 || !VERSION.contains(args[0])) {
            commands.forEach((name, command) -> root.addSubcommand(name, new CommandLine(command, factory)));
        }
    }
}
