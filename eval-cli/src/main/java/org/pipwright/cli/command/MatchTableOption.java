package org.pipwright.cli.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
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

    private String text;

    /** What tells this table from others. */
    String identity() {
        return table == null ? "shipped" : SealedLines.sha256(text());
    }

    private String text() {
        if (text != null) {
            return text;
        }
        try {
            text = Files.readString(table, StandardCharsets.UTF_8);
            return text;
        } catch (CharacterCodingException e) {
            throw new UserError("'" + table + "' is no text in UTF-8: give a CSV file");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Makes terms for each stakes that games under some rules can have. */
    Function<Stakes, CubeTerms> terms(Rules rules, EndgameTables tables) {
        if (!rules.match()) {
            if (table != null) {
                throw new UserError("--table is for matches, and this record is of money play: leave it out");
            }
            ExactCube exact = new ExactCube(tables);
            return stakes -> new MoneyTerms((MoneyStakes) stakes, exact);
        }
        MatchTable chances = table == null ? ShippedMatchTable.load() : MatchTableCsv.parse(text());
        if (rules.length() > chances.length()) {
            throw new UserError("the match table ends at " + chances.length() + "-away, but the match is to "
                    + rules.length() + ": give a longer one with --table");
        }
        return stakes -> new MatchTerms((MatchStakes) stakes, chances);
    }
}
