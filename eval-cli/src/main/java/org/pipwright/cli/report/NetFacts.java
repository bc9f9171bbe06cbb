package org.pipwright.cli.report;

import java.io.PrintWriter;
import org.pipwright.engine.network.Lanes;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.Net;
import org.pipwright.engine.network.ResidualNetwork;

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
        addFacts(table, "deep", "", model.net());
        model.quick().ifPresent(quick -> addFacts(table, "quick", "quick ", quick));
        model.notes().forEach((name, text) -> table.row(name, text));
        table.print(out);
    }

    private static void addFacts(Table table, String alone, String prefix, Net net) {
        if (net instanceof Lanes lanes) {
            table.row(
                    prefix + "contact",
                    facts(lanes.contact().shape(), lanes.contact().weights()));
            table.row(prefix + "race", facts(lanes.race().shape(), lanes.race().weights()));
        } else {
            String features = ((ResidualNetwork) net).features().label();
            table.row(alone, facts(net.shape() + " on " + features, net.weights()));
        }
    }

    private static String facts(String shape, int weights) {
        return shape + ", " + weights + " weights";
    }
}
