package org.pipwright.bench.strength;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * Strength against time: which nets no other net beats in both.
 *
 * @param nets all of them, the quickest first
 */
record Frontier(List<Timed> nets) {
    /**
     * A net's strength, what it loses and how long it thinks.
     *
     * @param stand what it wins against the yardstick
     * @param weights numbers that training has set
     * @param loss points that it loses a decision of the suite
     * @param lossError standard error of them
     * @param millis milliseconds a decision on one core, all plays of a roll judged
     */
    record Timed(Stand stand, int weights, double loss, double lossError, double millis) {}

    Frontier {
        nets = nets.stream().sorted(Comparator.comparingDouble(Timed::millis)).toList();
    }

    /** Whether no other net is as quick and stronger. */
    boolean holds(Timed net) {
        return nets.stream()
                .noneMatch(other -> other.millis() <= net.millis()
                        && other.stand().points() > net.stand().points());
    }

    /** A Markdown table, nets on the frontier in bold. */
    String table() {
        StringBuilder text = new StringBuilder("| net | weights | points a game | loss a decision | ms a decision |\n"
                + "| --- | ---: | ---: | ---: | ---: |\n");
        for (Timed net : nets) {
            String name = net.stand().name();
            text.append(String.format(
                    Locale.ROOT,
                    "| %s | %.2f M | %+.4f ± %.4f | %.5f ± %.5f | %.3f |%n",
                    holds(net) ? "**" + name + "**" : name,
                    net.weights() / 1e6,
                    net.stand().points(),
                    net.stand().error(),
                    net.loss(),
                    net.lossError(),
                    net.millis()));
        }
        return text.toString();
    }
}
