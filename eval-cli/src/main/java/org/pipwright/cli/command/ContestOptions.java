package org.pipwright.cli.command;

import java.nio.file.Path;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.duel.Contest;
import picocli.CommandLine.Option;

/** What is played with the cube, if it is. */
final class ContestOptions {
    @Option(
            names = "--money",
            description = "Games with the cube whose points are counted one by one, with the Jacoby rule.")
    private boolean money;

    @Option(
            names = "--match",
            paramLabel = "N",
            description = "Matches to N points, with the cube; --games then counts matches.")
    private Integer length;

    @Option(
            names = "--no-jacoby",
            description = "With --money: without the Jacoby rule, so that gammons count even if nobody has doubled.")
    private boolean noJacoby;

    @Option(names = "--beavers", description = "With --money: a double may be beavered.")
    private boolean beavers;

    @Option(
            names = "--table",
            paramLabel = "FILE",
            description = "With --match: a match table to play by instead of the one that comes with Pipwright.")
    private Path table;

    /** The contest; empty for cubeless games. */
    Contest contest() {
        if (money && length != null) {
            throw new UserError("--money and --match are two kinds of duel: give one of them");
        }
        if (!money && (noJacoby || beavers)) {
            throw new UserError((noJacoby ? "--no-jacoby" : "--beavers") + " needs --money");
        }
        if (length == null && table != null) {
            throw new UserError("--table needs --match");
        }
        if (money) {
            return new Contest.Money(new MoneyStakes(!noJacoby, beavers));
        }
        return length == null ? Contest.Cubeless.FULL_GAMES : match();
    }

    private Contest match() {
        try {
            return new Contest.Match(length, MatchTables.read(table));
        } catch (IllegalArgumentException e) {
            throw new UserError("--match: " + e.getMessage());
        }
    }
}
