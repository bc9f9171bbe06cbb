package org.pipwright.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.StandText;
import org.pipwright.engine.record.Entry;
import org.pipwright.engine.record.Game;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.Heading;
import org.pipwright.engine.record.OpenRecord;
import org.pipwright.engine.record.RecordCheck;
import org.pipwright.engine.record.Stand;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Record to the board at a turn, at its first mistake, or at its end. */
@Command(
        name = "board",
        customSynopsis = "pipwright record board FILE [--game N] [--turn N]",
        header = "Show the board at a turn of a record, or at its first mistake.",
        description = {
            "Shows how a game stood before a turn: the position, in the form that all commands read, the board, who is on"
                    + " roll, the cube and the score, and what was then rolled and played. Turns are numbered as in reviews."
                    + " Without --turn it shows how things stand at the end of the game or, if the record has a mistake,"
                    + " before the first one, and tells it."
        },
        footer = {
            "Examples:",
            "  pipwright record board evening.txt --game 2 --turn 13",
            "  pipwright record board evening.txt"
        })
public final class RecordBoardCommand extends CliCommand {
    @Parameters(paramLabel = "FILE", description = "A record, or an SGF file if its name ends in .sgf.")
    private String file;

    @Option(names = "--game", paramLabel = "N", description = "Number of the game. Default: the last.")
    private Integer game;

    @Option(names = "--turn", paramLabel = "N", description = "Number of the turn in the game, from 1.")
    private Integer turn;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public RecordBoardCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        RecordCheck check = RecordFiles.check(file);
        if (check.record().isEmpty()) {
            RecordCheck.Fault first = check.faults().get(0);
            if (game == null && turn == null && first.stand().isPresent()) {
                StandText.write(
                        check.heading().orElseThrow(),
                        first.stand().get(),
                        Optional.empty(),
                        console().unicode(),
                        out());
            }
            throw RecordFiles.fault(file, first);
        }
        GameRecord record = check.record().get();
        RecordFiles.requireTurns(file, record);
        show(record);
        return 0;
    }

    private void show(GameRecord record) {
        int number = game == null ? record.games().size() : game;
        if (number < 1 || number > record.games().size()) {
            throw new UserError("--game is " + number + ": '" + file + "' has 1 to "
                    + record.games().size());
        }
        List<Entry> entries = record.games().get(number - 1).entries();
        long turns = entries.stream().filter(Entry.Turn.class::isInstance).count();
        if (turn != null && (turn < 1 || turn > turns)) {
            throw new UserError("--turn is " + turn + ": game " + number + " has 1 to " + turns);
        }
        int at = turn == null ? entries.size() : place(entries);
        List<Game> games = new ArrayList<>(record.games().subList(0, number - 1));
        games.add(new Game(entries.subList(0, at), 0));
        Heading heading = record.heading();
        Stand stand = OpenRecord.of(new GameRecord(heading, games)).stand();
        StandText.write(
                heading,
                stand,
                turn == null ? Optional.empty() : Optional.of((Entry.Turn) entries.get(at)),
                console().unicode(),
                out());
    }

    /** Index of the turn among the entries. */
    private int place(List<Entry> entries) {
        int left = turn;
        int at = -1;
        while (left > 0) {
            at++;
            left -= entries.get(at) instanceof Entry.Turn ? 1 : 0;
        }
        return at;
    }
}
