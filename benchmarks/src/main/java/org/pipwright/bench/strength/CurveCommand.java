package org.pipwright.bench.strength;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.pipwright.bench.BenchCommand;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Draws the learning curve of a run from duels of its nets. */
@Command(name = "curve", description = "Draws how strong the nets of a run were while it went on.")
public final class CurveCommand extends BenchCommand {
    @Option(
            names = "--stands",
            required = true,
            paramLabel = "FILE",
            description = "What each net wins against the yardstick: minutes of training, net, points and error a line,"
                    + " tabs between.")
    private Path stands;

    @Option(names = "--title", required = true, paramLabel = "TEXT", description = "Title of the picture.")
    private String title;

    @Option(names = "--over", paramLabel = "NET", description = "The yardstick (default: ${DEFAULT-VALUE}).")
    private String yardstick = "fifth";

    @Option(
            names = "--out",
            required = true,
            paramLabel = "FOLDER",
            description = "The folder to write to; the picture is called as FILE is.")
    private Path folder;

    @Override
    protected void run() throws IOException {
        Files.createDirectories(folder);
        String name = stands.getFileName().toString().replaceFirst("\\.[^.]*$", "");
        CurvePicture.of(Stand.read(stands), title, yardstick).write(folder, name);
    }
}
