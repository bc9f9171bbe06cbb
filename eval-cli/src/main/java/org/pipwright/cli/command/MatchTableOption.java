package org.pipwright.cli.command;

import java.nio.file.Path;
import java.util.function.Function;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.ExactCube;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.files.SealedLines;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.MatchTableCsv;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.record.Rules;
import picocli.CommandLine.Option;

/** The match table that scores are valued by, and with it what positions are worth with the cube. */
final class MatchTableOption {
    @Option(
            names = "--table",
            paramLabel = "FILE",
            description = "A match table to use instead of the one that comes with Pipwright: a CSV file like it.")
    private Path table;

    /** What the file has, once it has been read: it may be a pipe. */
    private String text;

    boolean given() {
        return table != null;
    }

    /** What tells this table from others. */
    String identity() {
        return given() ? SealedLines.sha256(text()) : "shipped";
    }

    private String text() {
        text = text == null ? MatchTables.text(table) : text;
        return text;
    }

    MatchTable chances() {
        return given() ? MatchTableCsv.parse(text()) : ShippedMatchTable.load();
    }

    /** Makes terms for each stakes that games under some rules can have. */
    Function<Stakes, CubeTerms> terms(Rules rules, EndgameTables tables) {
        if (!rules.match()) {
            if (given()) {
                throw new UserError("--table is for matches, and this record is of money play: leave it out");
            }
            ExactCube exact = new ExactCube(tables);
            return stakes -> new MoneyTerms((MoneyStakes) stakes, exact);
        }
        MatchTable chances = chances();
        if (rules.length() > chances.length()) {
            throw new UserError("the match table ends at " + chances.length() + "-away, but the match is to "
                    + rules.length() + ": give a longer one with --table");
        }
        return stakes -> new MatchTerms((MatchStakes) stakes, chances);
    }
}
