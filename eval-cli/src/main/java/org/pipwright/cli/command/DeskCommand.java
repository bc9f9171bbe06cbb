package org.pipwright.cli.command;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.desk.DeskSetup;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.drill.Candidate;
import org.pipwright.engine.files.Reason;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.models.ModelCatalog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A board in the browser. */
@Command(
        name = "desk",
        customSynopsis = "pipwright desk [options]",
        header = "Open a board in the browser: to set up, ask, show, play and practise.",
        description = {
            "Starts a local page, prints its address and opens the browser; Ctrl-C ends it. Positions are set up on the"
                    + " board by hand; the net named by --net answers, as rank, odds and cube do, and a class can guess first.",
            "At a table a game, a match or a"
                    + " session is played by two people, by nets, or by one of each, with the cube and all rules. What is"
                    + " played is kept as a record (text and SGF) in the folder, turn by turn.",
            "A record, from a file or from a table, is gone through turn by turn while it is reviewed, as review does it.",
            "Exercises are asked one at a time: of a theme, from the mistakes in a record, or from a file of positions. What"
                    + " was wrong is asked again, also next time: the log is a text file.",
            "Only this machine can reach the page, and only with the key in the address. With --listen a port is opened"
                    + " besides: tablets of the class can look at what the class is shown and guess, and reach nothing else;"
                    + " they come in by a code on the teacher's screen."
        },
        footer = {
            "Examples:",
            "  pipwright desk",
            "  pipwright desk --record evening.txt --positions lesson4.txt",
            "  pipwright desk --records games --net swift --no-browser",
            "  pipwright desk --listen 192.168.1.20"
        })
public final class DeskCommand extends CliCommand {
    private static final int MAX_PORT = 65_535;

    @Option(
            names = "--port",
            paramLabel = "N",
            description = "Port to listen on, 1 to " + MAX_PORT + ". Default: any free one.")
    private int port;

    @Option(
            names = "--listen",
            paramLabel = "ADDRESS[:PORT]",
            arity = "0..1",
            fallbackValue = "",
            description =
                    "Open a port to everybody in the network of that address of this machine, for tablets of the class."
                            + " Without a value: its only address, and any free port.")
    private String listen;

    @Option(
            names = "--records",
            paramLabel = "FOLDER",
            description =
                    "Where records are kept; made if it is missing. Default: pipwright-games in the current folder.")
    private String kept = "pipwright-games";

    @Option(
            names = "--record",
            paramLabel = "FILE",
            arity = "1..*",
            description = "Open recorded games, one file or more, to go through them turn by turn.")
    private List<String> opened = new ArrayList<>();

    @Option(
            names = "--positions",
            paramLabel = "FILE",
            description = "Open a file of positions to practise, one a line, as for drill --positions.")
    private String positions;

    @Option(
            names = "--log",
            paramLabel = "FILE",
            description =
                    "Where answers to exercises are logged. Default: " + DeskSetup.LOG + " in the folder of records.")
    private String log;

    @Option(names = "--no-browser", description = "Only print the address.")
    private boolean noBrowser;

    @Option(names = "--threads", paramLabel = "T", description = "Threads to use. Default: one for each core.")
    private Integer threads;

    @Mixin
    private NetOption net;

    @Mixin
    private TablesOption tables;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public DeskCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        if (port < 0 || port > MAX_PORT) {
            throw new UserError("--port is " + port + ": use 1 to " + MAX_PORT);
        }
        int crew = Threads.checked(threads);
        Function<String, Knowledge> known = knowledge(crew);
        Optional<InetSocketAddress> guests = Optional.ofNullable(listen).map(ListenAddress::parse);
        Map<String, GameRecord> records = RecordsSearch.read(opened, Optional.empty());
        records.forEach(RecordFiles::requireTurns);
        Map<String, List<Candidate>> asked = positions == null
                ? Map.of()
                : Map.of(positions, PositionsSearch.read(positions, DrillOptions.MAX, console()));
        Path folder = folder();
        Path noted = log == null ? folder.resolve(DeskSetup.LOG) : OutputFile.checked(log);
        DeskJob.run(
                console(), new DeskSetup(port, nets(), known, folder, crew, records, asked, noted, guests), !noBrowser);
        return 0;
    }

    /** Shipped nets are loaded once the desk is up; a file may be damaged, and that is told before. */
    private Function<String, Knowledge> knowledge(int crew) {
        ModelCatalog catalog = ModelCatalog.shipped();
        EndgameTables exact = tables.standard(crew, console());
        Function<String, Knowledge> load =
                name -> Knowledge.of(catalog.load(name)).with(exact);
        String asked = net.name();
        if (catalog.names().contains(asked)) {
            return load;
        }
        Knowledge own = load.apply(asked);
        return name -> name.equals(asked) ? own : load.apply(name);
    }

    private List<String> nets() {
        List<String> names = new ArrayList<>(List.of(net.name()));
        NetOption.shipped().stream().filter(name -> !name.equals(net.name())).forEach(names::add);
        return names;
    }

    private Path folder() {
        try {
            return Files.createDirectories(Path.of(kept));
        } catch (InvalidPathException e) {
            throw new UserError("'" + e.getInput() + "' is not a folder name: " + e.getReason());
        } catch (IOException e) {
            throw new UserError("cannot make the folder '" + kept + "': " + Reason.of(e));
        }
    }
}
