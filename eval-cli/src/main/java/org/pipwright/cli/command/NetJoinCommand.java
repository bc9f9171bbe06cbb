package org.pipwright.cli.command;

import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.network.Lanes;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.Net;
import org.pipwright.models.ModelCatalog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A quick net and a deep one to one file. */
@Command(
        name = "join",
        customSynopsis = "pipwright net join QUICK DEEP --out FILE [--half] [--force]",
        header = "Put a quick net before a deep one, in one file.",
        description = {
            "The deep net judges as before. Where only the best play of a roll counts (replies in lookahead, games of"
                    + " rollouts and duels, luck), the quick net looks at all plays first, and the deep one judges those"
                    + " that come close to the quick one's best: most of its strength in a fraction of its time. Rankings"
                    + " show what the deep net says of every play.",
            "",
            "Of two nets that are joined already, the one that judges is taken. What the files say of where the nets come"
                    + " from is kept: of the quick one under names that begin with quick."
        },
        footer = {"Example:", "  pipwright net join fifth standard --out both.safetensors --half"})
public final class NetJoinCommand extends CliCommand {
    private static final String QUICK = "quick.";

    private final ModelCatalog catalog = ModelCatalog.shipped();

    @Parameters(
            index = "0",
            paramLabel = "QUICK",
            description = "The quick net: a name that net describe knows, or a model file.")
    private String quick;

    @Parameters(index = "1", paramLabel = "DEEP", description = "The deep net, a residual network, likewise.")
    private String deep;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            required = true,
            converter = OutputFile.Net.class,
            description = "The file to write.")
    private Path file;

    @Option(names = "--half", description = "Round both nets to half precision, two bytes a weight instead of four.")
    private boolean half;

    @Mixin
    private ForceOption force;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public NetJoinCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        Model before = catalog.load(quick);
        Model judging = catalog.load(deep);
        Net first = half ? before.net().halved() : before.net();
        Net then = half ? judging.net().halved() : judging.net();
        Model joined = new Model(then, notes(before, judging)).withQuick(first);
        if (!(first instanceof Lanes) && first.weights() >= then.weights()) {
            throw new UserError("the first net is to be the quick one, but " + quick + " has " + first.weights()
                    + " weights and " + deep + " " + then.weights() + ": name them the other way round");
        }
        OutputFile.write(file, ModelFile.toBytes(joined));
        out().println("wrote " + file + ": " + joined.shape());
        return 0;
    }

    /** What is known of both; what the file says of itself, its writer adds. */
    private static Map<String, String> notes(Model before, Model judging) {
        Map<String, String> notes = new TreeMap<>();
        judging.notes().forEach((name, text) -> {
            if (!name.startsWith(QUICK) && !ModelFile.ofFile(name)) {
                notes.put(name, text);
            }
        });
        before.notes().forEach((name, text) -> {
            if (!name.startsWith(QUICK) && !ModelFile.ofFile(name)) {
                notes.put(QUICK + name, text);
            }
        });
        return notes;
    }
}
