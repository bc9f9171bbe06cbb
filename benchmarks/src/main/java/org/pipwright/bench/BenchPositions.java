package org.pipwright.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.match.RandomPlayer;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Dice;

/** Fixed lists of unfinished positions. */
public final class BenchPositions {
    /** Length of the lists of {@link #randomPlay()} and {@link #netPlay()}. */
    public static final int COUNT = 1000;

    private static final String NET_PLAY = "net-play.txt";

    /** Of the positions of a game, every so many are taken, so that neighbours are no near copies. */
    private static final int EVERY = 7;

    private BenchPositions() {}

    /** Positions of games in which both sides play at random. */
    public static List<Position> randomPlay() {
        return play(new RandomPlayer(), COUNT, 5);
    }

    /** Positions of games that a network played against itself; the file says which. */
    public static List<Position> netPlay() {
        try (InputStream in = BenchPositions.class.getResourceAsStream(NET_PLAY);
                BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .map(PositionText::parse)
                    .collect(Collectors.toList());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Positions before the roll, from games of a player against itself. */
    static List<Position> play(Player player, int count, long seed) {
        List<Position> met = new ArrayList<>();
        int[] seen = new int[1];
        for (long game = 0; met.size() < count; game++) {
            new GameLoop()
                    .play(
                            Position.start(),
                            null,
                            player,
                            player,
                            Dice.ofGame(seed, game),
                            Dice.ofGame(seed + 1, game),
                            (planes, roll, legal, chosen) -> {
                                if (seen[0]++ % EVERY == 0) {
                                    met.add(Position.ofPlanes(planes, 0));
                                }
                            });
        }
        return met.subList(0, count);
    }

    /** The bit planes of positions, one after another. */
    public static int[] planes(List<Position> positions) {
        int[] planes = new int[positions.size() * Planes.STRIDE];
        for (int i = 0; i < positions.size(); i++) {
            positions.get(i).copyTo(planes, i * Planes.STRIDE);
        }
        return planes;
    }
}
