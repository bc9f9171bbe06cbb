package org.pipwright.cli.command;

import java.util.List;
import org.pipwright.engine.network.Model;
import org.pipwright.models.ModelCatalog;
import picocli.CommandLine.Option;

/** The net that a command judges with. */
final class NetOption {
    private final ModelCatalog catalog = ModelCatalog.shipped();

    @Option(
            names = "--net",
            paramLabel = "NAME|FILE",
            description =
                    "The net to judge with: a name that net describe knows, or a model file. Default:" + " standard.")
    private String net;

    String name() {
        return net == null ? catalog.defaultName() : net;
    }

    /** Nets that come with Pipwright. */
    static List<String> shipped() {
        return ModelCatalog.shipped().names();
    }

    Model load() {
        return NetAhead.load(name());
    }
}
