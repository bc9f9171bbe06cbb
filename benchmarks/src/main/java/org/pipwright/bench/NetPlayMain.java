package org.pipwright.bench;

import java.nio.file.Path;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;
import org.pipwright.engine.position.Position;

/** Prints positions of a network's games against itself, as {@code net-play.txt} holds them: the argument is a model file. */
public final class NetPlayMain {
    private static final long SEED = 11;

    private NetPlayMain() {}

    public static void main(String[] args) {
        Model model = ModelFile.read(Path.of(args[0]));
        System.out.println("# Unfinished positions, every 7th of the games that a network played against itself.");
        System.out.println("# Network: " + model.shape() + ", " + model.notes().get("games") + " games of self-play,");
        System.out.println("# SHA-256 of its weights " + model.notes().get(ModelFile.SHA256));
        EvaluatingPlayer player = new EvaluatingPlayer(new NetworkEvaluator(model));
        for (Position position : BenchPositions.play(player, BenchPositions.COUNT, SEED)) {
            System.out.println(position);
        }
    }
}
