package org.pipwright.cli.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.TableList;
import org.pipwright.cli.report.TableNotes;
import org.pipwright.engine.bearoff.DamagedTableException;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableCost;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.bearoff.TableKind;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Builds or checks the exact tables. */
@Command(
        name = "tables",
        customSynopsis = "pipwright tables [options]",
        header = "Build or check the exact tables of the bear-off.",
        description = {
            "The two standard tables are built by themselves when they are first needed: distributions of one side's rolls"
                    + " (15 checkers on points 1 to 6), and exact chances and equities of both (6 checkers a side). This"
                    + " command builds them now, and larger ones if asked, which count uses. Before it"
                    + " begins a larger one it says what that will take."
        },
        footer = {"Examples:", "  pipwright tables", "  pipwright tables --points 8", "  pipwright tables --check"})
public final class TablesCommand extends CliCommand {
    private static final int MAX_POINTS = 11;

    private static final int MAX_PAIRS = 10;

    @Mixin
    private TablesOption tables;

    @Option(
            names = "--points",
            paramLabel = "N",
            description =
                    "Also build the distributions for 15 checkers on points 1 to N, N from 7 to 11: each point more"
                            + " takes about three times the space and time.")
    private Integer points;

    @Option(
            names = "--pairs",
            paramLabel = "N",
            description = "Also build the exact table of N checkers a side, N from 7 to 10; 10 take 1 GiB.")
    private Integer pairs;

    @Option(names = "--threads", paramLabel = "N", description = "Threads to build with. Default: all processors.")
    private Integer threads;

    @Option(
            names = "--check",
            description =
                    "Build nothing; read all tables there are, compare them with their checksums, and end with exit"
                            + " code 2 if one is damaged.")
    private boolean check;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public TablesCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() throws IOException {
        requireRange("--points", points, EndgameTables.HOME.points() + 1, MAX_POINTS);
        requireRange("--pairs", pairs, EndgameTables.LAST_SIX.checkers() + 1, MAX_PAIRS);
        requireRange("--threads", threads, 1, 1024);
        out().println("folder " + tables.folder().path());
        if (check) {
            checkAll();
            return 0;
        }
        build(TableKind.ONE_SIDED, EndgameTables.HOME, false);
        build(TableKind.TWO_SIDED, EndgameTables.LAST_SIX, false);
        if (points != null) {
            build(TableKind.ONE_SIDED, new SideIndex(points, EndgameTables.HOME.checkers()), true);
        }
        if (pairs != null) {
            build(TableKind.TWO_SIDED, new SideIndex(EndgameTables.LAST_SIX.points(), pairs), true);
        }
        return 0;
    }

    private static void requireRange(String option, Integer value, int least, int most) {
        if (value != null && (value < least || value > most)) {
            throw new UserError(option + " is " + value + ": use " + least + " to " + most);
        }
    }

    private void build(TableKind kind, SideIndex index, boolean large) throws IOException {
        TableFolder folder = tables.folder().keeping();
        int crew = threads == null ? Runtime.getRuntime().availableProcessors() : threads;
        if (large && !whole(folder, kind, index)) {
            console()
                    .err()
                    .println(TableList.title(kind, index) + ": " + TableList.cost(TableCost.of(kind, index, crew)));
        }
        TableNotes notes = new TableNotes(console());
        try {
            if (kind == TableKind.ONE_SIDED) {
                folder.oneSided(index, crew, notes);
            } else {
                folder.twoSided(index, crew, notes);
            }
        } catch (UncheckedIOException e) {
            throw new UserError(e.getMessage() + ": make room there, or name a folder of yours with --cache");
        }
        out().println(TableList.title(kind, index) + ": ready, "
                + TableList.size(Files.size(folder.file(kind, index))));
    }

    private static boolean whole(TableFolder folder, TableKind kind, SideIndex index) {
        try {
            folder.check(kind, index);
            return true;
        } catch (DamagedTableException | IOException e) {
            return false;
        }
    }

    private void checkAll() throws IOException {
        for (TableFolder.Entry entry : tables.folder().entries()) {
            String title = TableList.title(entry.kind(), entry.index());
            try {
                tables.folder().check(entry.kind(), entry.index());
                out().println(title + ": whole");
            } catch (DamagedTableException e) {
                throw new UserError("the " + title + " is damaged (" + e.getMessage() + "): remove '"
                        + tables.folder().file(entry.kind(), entry.index()) + "', it is then built again");
            }
        }
    }
}
