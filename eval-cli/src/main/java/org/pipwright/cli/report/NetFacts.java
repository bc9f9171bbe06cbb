package org.pipwright.cli.report;

import java.io.PrintWriter;
import org.pipwright.engine.network.Layer;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.Network;

/** What a model file says about itself. */
public final class NetFacts {
    private NetFacts() {}

    /**
     * Prints the facts, one a line.
     *
     * @param model the model
     * @param out where to
     */
    public static void write(Model model, PrintWriter out) {
        Table table = new Table("ll");
        table.row("contact", facts(model.contact()));
        table.row("race", facts(model.race()));
        model.notes().forEach((name, text) -> table.row(name, text));
        table.print(out);
    }

    private static String facts(Network network) {
        int weights = network.layers().stream()
                .mapToInt((Layer layer) -> layer.weights().length + layer.biases().length)
                .sum();
        return network.shape() + ", " + weights + " weights";
    }
}
