package org.pipwright.bench.start;

import java.util.LinkedHashMap;
import java.util.Map;
import org.pipwright.bench.games.Ratio;
import org.pipwright.bench.games.SelfGames;
import org.pipwright.bench.games.SelfPlayer;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Dice;

/** What games of self-play are like: how they end for the side that begins, how long they are, how much choice they give. */
final class Played {
    private static final int OUTCOMES = Outcomes.COUNT;
    private static final String[] NAMES = {
        "win single", "win gammon", "win backgammon", "lose single", "lose gammon", "lose backgammon"
    };
    private static final int[] POINTS = {1, 2, 3, -1, -2, -3};

    private final Map<String, Ratio> figures = new LinkedHashMap<>();
    private int games;

    /** How one game went. */
    record Game(int outcome, int rolls, int plays, int blocked) {}

    /** Plays so many games. */
    static Played of(SelfGames play, int games) {
        Played played = new Played();
        play.play(Played::one, game -> {
            played.add(game);
            return played.games < games;
        });
        return played;
    }

    private static Game one(SelfPlayer player, Dice dice, Dice choices) {
        int[] counts = new int[2];
        float[] out = new float[OUTCOMES];
        player.play(
                dice,
                (planes, roll, legal, chosen) -> {
                    boolean blocked = isBlocked(planes, legal);
                    counts[0] += blocked ? 0 : legal.size();
                    counts[1] += blocked ? 1 : 0;
                },
                out);
        int outcome = 0;
        while (out[outcome] == 0) {
            outcome++;
        }
        return new Game(outcome, player.turns(), counts[0], counts[1]);
    }

    /** Whether no checker can move: the generator then gives the position itself. */
    private static boolean isBlocked(int[] planes, PlayGenerator legal) {
        if (legal.size() > 1) {
            return false;
        }
        for (int k = 0; k < Planes.SIDE; k++) {
            if (planes[k] != legal.results()[k]) {
                return false;
            }
        }
        return true;
    }

    void add(Game game) {
        games++;
        for (int k = 0; k < OUTCOMES; k++) {
            share(NAMES[k], game.outcome() == k);
        }
        int points = POINTS[game.outcome()];
        share("win", points > 0);
        mean("points", points, 1);
        share("gammon or more", Math.abs(points) >= 2);
        share("gammon", Math.abs(points) == 2);
        share("backgammon", Math.abs(points) == 3);
        mean("rolls a game", game.rolls(), 1);
        mean("legal plays a roll", game.plays(), game.rolls());
        mean("legal plays a roll that can be played", game.plays(), game.rolls() - game.blocked());
        mean("rolls without a play", game.blocked(), game.rolls());
    }

    private void share(String name, boolean holds) {
        mean(name, holds ? 1 : 0, 1);
    }

    private void mean(String name, double above, double below) {
        figures.computeIfAbsent(name, n -> new Ratio()).add(above, below);
    }

    int games() {
        return games;
    }

    /** Shares from 0 to 1, points a game and counts, by name, in the order of a table. */
    Map<String, Ratio> figures() {
        return figures;
    }
}
