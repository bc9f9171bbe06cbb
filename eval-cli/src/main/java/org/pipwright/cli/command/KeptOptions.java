package org.pipwright.cli.command;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.files.WorkFile;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where long work keeps what it has found, from where it goes on, and by how many threads. */
final class KeptOptions {
    @Option(
            names = "--save",
            paramLabel = "FILE",
            converter = OutputFile.Work.class,
            description = "Keep the results so far in a file, to resume from.")
    private Path save;

    @Option(
            names = "--resume",
            paramLabel = "FILE",
            converter = OutputFile.Kept.class,
            description =
                    "Continue from such a file and keep it up to date: the results are those of a run that was never"
                            + " stopped. What is asked about, net and settings must be as they were.")
    private Path resume;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Threads to use; answers do not depend on it. Default: one for each core.")
    private Integer threads;

    @Mixin
    private ForceOption force;

    private WorkFile kept = WorkFile.NONE;

    int threads() {
        return Threads.checked(threads);
    }

    /** The file that was asked for; {@code judge} has what judges, one thing a line. */
    WorkFile file(WorkFile.Kind kind, List<String> judge, PrintWriter err) {
        if (save != null && resume != null) {
            throw new UserError("--save begins a file anew and --resume goes on with one: give one of them");
        }
        if (resume == null && save == null) {
            return WorkFile.NONE;
        }
        kept = resume == null ? kind.fresh(save, judge) : kind.resumed(resume, judge);
        return kept.warning(line -> err.println("pipwright: " + line));
    }

    /** What to do to go on after a stop; nothing if nothing is kept. */
    String howToGoOn() {
        Path file = save == null ? resume : save;
        if (file == null) {
            return "; --save FILE would have kept what was found";
        }
        return kept.problem().map(problem -> "; " + problem).orElse("") + "; --resume " + file + " goes on";
    }

    /** Once all is printed: sees that it was kept too, if that was asked for. */
    void requireKept() {
        kept.problem().ifPresent(problem -> {
            throw new UserError(problem + ": what is printed is not in it, but what was kept before still is");
        });
    }
}
