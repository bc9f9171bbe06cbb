package org.pipwright.cli.command;

import org.pipwright.engine.network.Model;
import org.pipwright.models.ModelCatalog;
import picocli.CommandLine.Parameters;

/** The net that a command is about. */
final class NetArgument {
    private final ModelCatalog catalog = ModelCatalog.shipped();

    @Parameters(
            paramLabel = "NAME|FILE",
            description = "A net that comes with Pipwright, by name, or a model file, by path.")
    private String net;

    String name() {
        return net;
    }

    Model load() {
        return catalog.load(net);
    }

    /** The same, with nothing taken for granted. */
    Model verify() {
        return catalog.verify(net);
    }
}
