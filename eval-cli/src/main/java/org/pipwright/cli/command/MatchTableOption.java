package org.pipwright.cli.command;

import java.nio.file.Path;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.files.SealedLines;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.MatchTableCsv;
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

    /** What is known, with this table if one was given. */
    Knowledge knowledge(Knowledge standard) {
        return given() ? standard.with(chances()) : standard;
    }

    /** The same; fails if the table does not fit games under some rules. */
    Knowledge knowledge(Knowledge standard, Rules rules) {
        if (!rules.match() && given()) {
            throw new UserError("--table is for matches, and this record is of money play: leave it out");
        }
        int longest = rules.match() ? chances().length() : rules.length();
        if (rules.length() > longest) {
            throw new UserError("the match table ends at " + longest + "-away, but the match is to " + rules.length()
                    + ": give a longer one with --table");
        }
        return knowledge(standard);
    }
}
