package org.pipwright.cli.command;

import org.pipwright.cli.console.Console;
import org.pipwright.engine.record.GameRecord;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Record to a record in the other format, or in tidy form. */
@Command(
        name = "convert",
        customSynopsis = "pipwright record convert FILE TARGET [--force]",
        header = "Convert a record to SGF, from SGF, or to its tidy form.",
        description = {
            "Checks the record and writes it to the target: as SGF (FF[4], GM[6]) if that name ends in .sgf, else as a"
                    + " record with every play in the usual notation. Nothing is overwritten without --force."
        },
        footer = {
            "Examples:",
            "  pipwright record convert evening.txt evening.sgf",
            "  pipwright record convert evening.sgf tidy.txt"
        })
public final class RecordConvertCommand extends CliCommand {
    @Parameters(index = "0", paramLabel = "FILE", description = "A record, or an SGF file if its name ends in .sgf.")
    private String file;

    @Parameters(index = "1", paramLabel = "TARGET", description = "The file to write.")
    private String target;

    @Mixin
    private ForceOption force;

    @Spec
    private CommandSpec spec;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public RecordConvertCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        GameRecord record = RecordFiles.read(file);
        OutputGuard.check(
                spec.commandLine().getParseResult(),
                spec.positionalParameters().get(1),
                OutputFile.checked(target),
                OutputKind.RECORD);
        RecordFiles.write(record, target);
        int games = record.games().size();
        out().println("wrote " + target + ": " + games + (games == 1 ? " game" : " games"));
        return 0;
    }
}
