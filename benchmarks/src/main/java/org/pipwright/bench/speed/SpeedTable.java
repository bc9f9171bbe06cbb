package org.pipwright.bench.speed;

import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.results.BenchmarkResult;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.util.ListStatistics;

/** Results as a page of Markdown. */
final class SpeedTable {
    /** What inference rates are compared with. */
    private static final String REFERENCE = "VectorInferenceBenchmark.incremental";

    private static final String HEAD = "| benchmark | a CPU second | spread | ns each | of vector incremental |\n"
            + "| --- | ---: | ---: | ---: | ---: |\n";

    private static final String LEGEND = "One thread each. \"A CPU second\" is the median, over all measurements of a"
            + " second, of the rate divided by the share of a processor that the JVM got; \"spread\" the distance from"
            + " the least to the greatest. `generate` counts (position, roll) pairs, `positions` the distinct positions"
            + " they lead to, all others positions. Ours includes the measures, the mask and the softmax; the peers get"
            + " their input encoded beforehand, and Deeplearning4j stops before the softmax. The network is"
            + " 270-256-32-6.\n";

    private static final String BUILD_HEAD = "\nBuilding, each time as a whole, in milliseconds that passed:\n\n"
            + "| benchmark | ms | spread |\n| --- | ---: | ---: |\n";

    private SpeedTable() {}

    static String of(Machine before, Collection<RunResult> results, Machine after) {
        Map<String, ListStatistics> rates = new TreeMap<>();
        Map<String, ListStatistics> times = new TreeMap<>();
        Map<String, String> flags = new TreeMap<>();
        for (RunResult result : results) {
            String name = name(result);
            boolean once = result.getParams().getMode() == Mode.SingleShotTime;
            for (BenchmarkResult fork : result.getBenchmarkResults()) {
                fork.getIterationResults().forEach(iteration -> {
                    if (once) {
                        add(name, iteration.getPrimaryResult().getScore(), times);
                    } else {
                        add(name, iteration, rates);
                    }
                });
            }
            flags.put(name, String.join(" ", result.getParams().getJvmArgs()));
        }
        StringBuilder page = new StringBuilder("# Speed\n\n");
        page.append("`benchmarks/run speed`, ")
                .append(before.date())
                .append(", ")
                .append(before.cpu());
        page.append(String.format(
                Locale.ROOT,
                ", %d processors, %s. Load average %.1f at the start and %.1f at the end: above 1, others were at work"
                        + " on the machine too, and ratios mean more than rates.%n%n",
                before.processors(),
                before.jdk(),
                before.load(),
                after.load()));
        page.append(LEGEND).append('\n').append(HEAD);
        ListStatistics reference = rates.get(REFERENCE);
        rates.forEach((name, rate) -> page.append(row(name, rate, reference)));
        if (!times.isEmpty()) {
            page.append(BUILD_HEAD);
            times.forEach((name, time) -> page.append(String.format(
                    Locale.ROOT, "| %s | %,.0f | %.0f %% |%n", name, time.getPercentile(50), spread(time))));
        }
        page.append("\nJVM flags: ").append(describe(flags)).append(".\n");
        return page.toString();
    }

    /** Adds a measurement: the main rate under the benchmark's name, each counter's with its label behind. */
    private static void add(String name, IterationResult iteration, Map<String, ListStatistics> rates) {
        double share = iteration.getSecondaryResults().get(CpuShare.LABEL).getScore();
        add(name, iteration.getPrimaryResult().getScore() / share, rates);
        iteration.getSecondaryResults().forEach((label, counter) -> {
            if (!label.equals(CpuShare.LABEL)) {
                add(name + " " + label, counter.getScore() / share, rates);
            }
        });
    }

    private static void add(String name, double rate, Map<String, ListStatistics> rates) {
        rates.computeIfAbsent(name, key -> new ListStatistics()).addValue(rate);
    }

    private static String name(RunResult result) {
        String method = result.getParams().getBenchmark();
        String brief = method.substring(method.lastIndexOf('.', method.lastIndexOf('.') - 1) + 1);
        String params = result.getParams().getParamsKeys().stream()
                .map(key -> " " + key + " " + result.getParams().getParam(key))
                .collect(Collectors.joining());
        return brief + params;
    }

    private static String row(String name, ListStatistics rate, ListStatistics reference) {
        double median = rate.getPercentile(50);
        boolean inference = name.contains("Inference") || name.contains("Onnx") || name.contains("Dl4j");
        String ratio = inference && reference != null
                ? String.format(Locale.ROOT, "%.3f", median / reference.getPercentile(50))
                : "";
        return String.format(
                Locale.ROOT,
                "| %s | %,.0f | %.0f %% | %,.0f | %s |%n",
                name,
                median,
                spread(rate),
                1e9 / median,
                ratio);
    }

    /** From the least to the greatest, in per cent of the median. */
    private static double spread(ListStatistics values) {
        return 100 * (values.getMax() - values.getMin()) / values.getPercentile(50);
    }

    /** Each set of flags once, with who ran under it. */
    private static String describe(Map<String, String> flags) {
        Map<String, String> byFlags = new TreeMap<>();
        flags.forEach((name, set) ->
                byFlags.merge(set, name.substring(0, name.indexOf('.')), (a, b) -> a.contains(b) ? a : a + ", " + b));
        return byFlags.entrySet().stream()
                .map(entry -> "`" + entry.getKey() + "` (" + entry.getValue() + ")")
                .collect(Collectors.joining("; "));
    }
}
