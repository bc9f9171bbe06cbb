package org.pipwright.bench.strength;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

/**
 * Draws decisions from games without a cube: all ordered pairs of players in turn, at most one decision of each regime from
 * a game, until there are as many of every regime as are wanted.
 *
 * @param <D> a decision
 */
abstract class RegimeSampler<D> {
    private final List<Entrant> entrants;
    private final List<Player> players = new ArrayList<>();
    private final long seed;
    private final int each;
    private final Map<Regime, List<D>> found = new EnumMap<>(Regime.class);
    private int games;

    RegimeSampler(List<Entrant> entrants, long seed, int each) {
        this.entrants = List.copyOf(entrants);
        this.seed = seed;
        this.each = each;
        entrants.forEach(entrant -> players.add(entrant.players().get()));
        for (Regime regime : Regime.values()) {
            found.put(regime, new ArrayList<>());
        }
    }

    /** A moment of a game: before a roll is played. */
    record Moment(Position position, Regime regime, Roll roll, int legalPlays, String players) {}

    /** The decision that a moment holds, if any; {@code number} decisions of its regime have been kept so far. */
    abstract Optional<D> at(Moment moment, int number);

    /** Whether to keep the decision drawn from a game; asked once for each. */
    abstract boolean keep(D decision);

    /** The same with its number in the file. */
    abstract D numbered(D decision, int id);

    /** Plays until there are enough of every regime; throws if most games played do not bring that about. */
    List<D> sample(int mostGames) {
        while (found.values().stream().anyMatch(list -> list.size() < each)) {
            if (games == mostGames) {
                throw new IllegalArgumentException(games + " games did not give " + each + " decisions of each regime: "
                        + "ask for fewer, or name other players");
            }
            playOne();
        }
        List<D> all = new ArrayList<>();
        found.values().forEach(list -> list.forEach(decision -> all.add(numbered(decision, all.size() + 1))));
        return all;
    }

    int games() {
        return games;
    }

    private void playOne() {
        int pair = games % (players.size() * players.size());
        int first = pair / players.size();
        int second = pair % players.size();
        Map<Regime, List<D>> ofGame = new EnumMap<>(Regime.class);
        Dice dice = Dice.ofGame(seed, 2L * games);
        Dice choices = Dice.ofGame(seed, 2L * games + 1);
        int[] turn = {0};
        new GameLoop()
                .play(
                        Position.start(),
                        dice.opening(),
                        players.get(first),
                        players.get(second),
                        dice,
                        choices,
                        (planes, roll, legal, chosen) -> {
                            int onRoll = turn[0]++ % 2 == 0 ? first : second;
                            Position position = Position.ofPlanes(planes, 0);
                            consider(
                                    new Moment(
                                            position,
                                            Regime.of(position),
                                            roll,
                                            legal.size(),
                                            name(onRoll) + " v " + name(first + second - onRoll)),
                                    ofGame);
                        });
        games++;
        ofGame.forEach((regime, list) -> {
            D one = list.get(choices.below(list.size()));
            if (keep(one)) {
                found.get(regime).add(one);
            }
        });
    }

    private String name(int player) {
        return entrants.get(player).name();
    }

    private void consider(Moment moment, Map<Regime, List<D>> ofGame) {
        int number = found.get(moment.regime()).size();
        if (number < each) {
            at(moment, number).ifPresent(decision -> ofGame.computeIfAbsent(moment.regime(), r -> new ArrayList<>())
                    .add(decision));
        }
    }
}
