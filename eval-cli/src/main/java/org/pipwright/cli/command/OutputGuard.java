package org.pipwright.cli.command;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.text.Excerpt;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/**
 * The one place that decides whether a file that a command is told to write may be written: never if the same command reads
 * it or writes something else to it, and without {@code --force} only if nothing is lost but what {@link OutputKind} allows.
 * Asked for all options that {@link OutputFile} converts before any command runs, so that nothing is computed in vain.
 */
public final class OutputGuard {
    private static final String FORCE = "--force";

    /** The label of arguments that are no file names, whatever they say. */
    private static final String TEXT = "TEXT";

    private OutputGuard() {}

    /**
     * Checks the files that a command line writes.
     *
     * @param parsed the command line
     * @throws UserError if one of them must not be written
     */
    public static void check(ParseResult parsed) {
        ParseResult command = parsed;
        while (command.hasSubcommand()) {
            command = command.subcommand();
        }
        if (command.isUsageHelpRequested()) {
            return;
        }
        for (ArgSpec argument : command.matchedArgs()) {
            Optional<OutputKind> kind = OutputFile.kind(argument);
            if (kind.isPresent() && argument.getValue() instanceof Path file && !file.equals(OutputFile.STDOUT)) {
                check(command, argument, file, kind.get());
            }
        }
    }

    /** Checks one file that an argument leads to. */
    static void check(ParseResult command, ArgSpec output, Path file, OutputKind kind) {
        for (ArgSpec other : command.matchedArgs()) {
            if (other != output && names(other).stream().anyMatch(name -> same(file, name))) {
                throw new UserError(
                        name(output) + " and " + name(other) + " are the same file: give them different names");
            }
        }
        if (!command.matchedOptionValue(FORCE, false) && Files.exists(file)) {
            String head = head(file);
            Optional<String> objection =
                    head.isEmpty() ? Optional.empty() : kind.objection("'" + Excerpt.of(file.toString()) + "'", head);
            if (objection.isPresent()) {
                throw new UserError(objection.get());
            }
        }
    }

    /** Names of files that an argument may give: alone, in a list, or with a lookahead behind it. */
    private static List<String> names(ArgSpec argument) {
        List<String> names = new ArrayList<>();
        if (!TEXT.equals(argument.paramLabel())) {
            for (String value : argument.originalStringValues()) {
                names.add(value);
                for (String part : value.split(",")) {
                    names.add(part.strip().replaceFirst("@\\d+$", ""));
                }
            }
        }
        return names;
    }

    private static boolean same(Path file, String name) {
        if (name.isEmpty()) {
            return false;
        }
        try {
            Path other = Path.of(name);
            return file.toAbsolutePath()
                            .normalize()
                            .equals(other.toAbsolutePath().normalize())
                    || Files.exists(file) && Files.exists(other) && Files.isSameFile(file, other);
        } catch (InvalidPathException | IOException e) {
            return false;
        }
    }

    private static String name(ArgSpec argument) {
        return argument.isOption() ? ((OptionSpec) argument).longestName() : argument.paramLabel();
    }

    /** The beginning of a file; what cannot be read is of no kind. */
    private static String head(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            return OutputKind.head(in.readNBytes(OutputKind.HEAD));
        } catch (IOException e) {
            return "?";
        }
    }
}
