package org.pipwright.bench;

import org.pipwright.engine.network.Model;
import org.pipwright.models.ModelCatalog;
import picocli.CommandLine.Option;

/** Which net. */
public final class NetOption {
    @Option(names = "--net", paramLabel = "NAME|FILE", description = "The net (default: ${DEFAULT-VALUE}).")
    private String name = ModelCatalog.shipped().defaultName();

    /** As it was given. */
    public String name() {
        return name;
    }

    /** The net itself. */
    public Model load() {
        return ModelCatalog.shipped().load(name);
    }
}
