package org.pipwright.cli.command;

import java.util.Optional;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.report.NetFacts;
import org.pipwright.engine.network.Model;
import org.pipwright.models.ModelCatalog;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Net to its card and what its file says. */
@Command(
        name = "describe",
        customSynopsis = "pipwright net describe [NAME|FILE]",
        header = "Print a net's card and what its file says about it.",
        description = {
            "The card tells how the net was trained and what it was measured to do. Without a name: list the nets that come"
                    + " with Pipwright."
        },
        footer = {"Example:", "  pipwright net describe"})
public final class NetDescribeCommand extends CliCommand {
    private final ModelCatalog catalog = ModelCatalog.shipped();

    @Parameters(
            paramLabel = "NAME|FILE",
            arity = "0..1",
            description = "A net that comes with Pipwright, by name, or a model file, by path.")
    private String net;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public NetDescribeCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        if (net == null) {
            catalog.names().forEach(name -> out().println(name + "  "
                    + catalog.load(name).shape() + (name.equals(catalog.defaultName()) ? "  (the default)" : "")));
            return 0;
        }
        Model model = catalog.load(net);
        Optional<String> card = catalog.card(net);
        card.ifPresent(text -> {
            out().println(text.strip());
            out().println();
        });
        NetFacts.write(model, out());
        return 0;
    }
}
