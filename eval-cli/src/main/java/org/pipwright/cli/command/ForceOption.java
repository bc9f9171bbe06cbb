package org.pipwright.cli.command;

import picocli.CommandLine.Option;

/** Replaces files that are there already; {@link OutputGuard} asks for it. */
final class ForceOption {
    @Option(names = "--force", description = "Overwrite an existing file, whatever it holds.")
    private boolean force;
}
