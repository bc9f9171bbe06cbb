package org.pipwright.bench;

import picocli.CommandLine.Option;

/** How many threads. */
public final class ThreadsOption {
    @Option(names = "--threads", paramLabel = "N", description = "Threads (default: ${DEFAULT-VALUE}, all cores).")
    @Within(min = 1, max = 1024)
    private int threads = Runtime.getRuntime().availableProcessors();

    /** Their number. */
    public int count() {
        return threads;
    }
}
