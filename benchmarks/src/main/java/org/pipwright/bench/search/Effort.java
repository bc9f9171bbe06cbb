package org.pipwright.bench.search;

import java.lang.management.ManagementFactory;
import java.util.List;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.search.Choice;
import org.pipwright.engine.search.Lookahead;

/**
 * What it took one thread to choose: processor time, so that other work on the machine matters less.
 *
 * @param choices number of choices made
 * @param seconds processor time of all
 * @param most processor time of the longest
 * @param valued positions valued by the evaluator
 */
record Effort(int choices, double seconds, double most, long valued) {
    static Effort of(Lookahead search, List<Choice> choices, int lookahead) {
        float[] chances = new float[Outcomes.COUNT];
        long before = search.evaluations();
        double all = 0;
        double most = 0;
        for (Choice choice : choices) {
            long began = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            search.choose(choice.planes(), 0, choice.results(), choice.count(), lookahead, chances);
            double took = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - began) / 1e9;
            all += took;
            most = Math.max(most, took);
        }
        return new Effort(choices.size(), all, most, search.evaluations() - before);
    }

    double rate() {
        return valued / seconds;
    }
}
