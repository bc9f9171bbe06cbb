package org.pipwright.bench.exact;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.pipwright.bench.games.SelfGames;
import org.pipwright.bench.games.SelfPlayer;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Judgement;

/**
 * Races as games of self-play bring them.
 *
 * @param games number of games played
 * @param begun positions before the first roll without contact: all there are, one a game unless contact lasts to its end
 * @param near the first of each race with all checkers on points 1 to {@value #NEAR}, where a larger table knows it
 * @param covered decisions between plays in races that the standard two-sided table covers
 */
record PlayedRaces(int games, List<Position> begun, List<Position> near, List<Decision> covered) {
    /** Points of that table. */
    static final int NEAR = 8;

    /** A roll that leaves a choice. */
    record Decision(Position position, Roll roll) {}

    /** Plays until so many races have begun. */
    static PlayedRaces of(Supplier<Judgement> judgements, int races, long seed, int threads) {
        List<Position> begun = new ArrayList<>();
        List<Position> near = new ArrayList<>();
        List<Decision> covered = new ArrayList<>();
        int[] games = {0};
        try (SelfGames play = new SelfGames(judgements, 0, seed, threads)) {
            play.play(PlayedRaces::one, game -> {
                games[0]++;
                begun.addAll(game.begun());
                near.addAll(game.near());
                covered.addAll(game.covered());
                return begun.size() < races;
            });
        }
        return new PlayedRaces(games[0], begun, near, covered);
    }

    private static PlayedRaces one(SelfPlayer player, Dice dice, Dice choices) {
        PlayedRaces found = new PlayedRaces(1, new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        player.play(
                dice,
                (planes, roll, legal, chosen) -> {
                    if (!Planes.contact(planes, 0)) {
                        found.add(Position.ofPlanes(planes, 0), roll, legal.size());
                    }
                },
                new float[Outcomes.COUNT]);
        return found;
    }

    private void add(Position position, Roll roll, int plays) {
        if (begun.isEmpty()) {
            begun.add(position);
        }
        int[] planes = position.toPlanes();
        if (near.isEmpty() && Planes.rearmost(planes, 0) <= NEAR && Planes.rearmost(planes, Planes.SIDE) <= NEAR) {
            near.add(position);
        }
        if (plays > 1 && EndgameTables.standardBasis(position) == Basis.EXACT) {
            covered.add(new Decision(position, roll));
        }
    }
}
