package org.pipwright.cli.command;

import org.pipwright.cli.console.UserError;
import picocli.CommandLine.Option;

/** How many games are played, with which dice, by how many threads. */
final class GamesOptions {
    @Option(
            names = "--games",
            paramLabel = "N",
            description = "How many games, an even number: each dice sequence is played twice with sides swapped.")
    private Long games;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description =
                    "Seed of the dice. Default: 1. The same seed gives the same result, with any number of threads.")
    private long seed;

    @Option(
            names = "--luck",
            description = "Also measure the luck of the rolls, as the players' nets see it, and take it off the result:"
                    + " a smaller error from the same games, but they take some 30 times longer.")
    private boolean luck;

    @Option(names = "--threads", paramLabel = "N", description = "Threads to use. Default: one for each core.")
    private Integer threads;

    /** Pairs to play: those asked for, or half of {@code otherwise}. */
    long pairs(long otherwise) {
        long asked = games == null ? otherwise : games;
        if (asked < 2 || asked % 2 != 0) {
            throw new UserError("--games is " + asked + ": games go in pairs, give an even number from 2 up");
        }
        return asked / 2;
    }

    long seed() {
        return seed;
    }

    boolean luck() {
        return luck;
    }

    int threads() {
        return Threads.checked(threads);
    }
}
