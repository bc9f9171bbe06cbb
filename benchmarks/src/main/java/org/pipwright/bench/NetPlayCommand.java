package org.pipwright.bench;

import java.nio.file.Path;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.position.Position;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Prints positions of a network's games against itself, as {@code net-play.txt} holds them. */
@Command(name = "net-play", description = "Positions of a net's games against itself, in the form of net-play.txt.")
public final class NetPlayCommand extends BenchCommand {
    private static final long SEED = 11;

    @Parameters(paramLabel = "MODEL", description = "The net's file.")
    private Path file;

    @Override
    protected void run() {
        Model model = ModelFile.read(file);
        out().println("# Unfinished positions, every 7th of the games that a network played against itself.");
        out().println("# Network: " + model.shape() + ", " + model.notes().get("games") + " games of self-play,");
        out().println("# SHA-256 of its weights " + model.notes().get(ModelFile.SHA256));
        EvaluatingPlayer player = new EvaluatingPlayer(new NetworkEvaluator(model));
        for (Position position : BenchPositions.play(player, BenchPositions.COUNT, SEED)) {
            out().println(position);
        }
    }
}
