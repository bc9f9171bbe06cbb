package org.pipwright.cli.command;

import picocli.CommandLine.Option;

/** Replaces files that are there already; {@link OutputGuard} asks for it. */
final class ForceOption {
    @Option(names = "--force", description = "Write over a file that is there, whatever it has.")
    private boolean force;
}
