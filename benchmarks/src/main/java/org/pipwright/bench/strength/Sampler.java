package org.pipwright.bench.strength;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiPredicate;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

/**
 * Draws decisions from games: all ordered pairs of players in turn, at most one decision of each regime from a game, each
 * position and roll once. A decision has at least two plays that a judge thinks sensible.
 */
final class Sampler {
    /** Plays this close to the judge's best are sensible, in points per game. */
    static final double WITHIN = 0.12;

    private final List<Entrant> entrants;
    private final List<Player> players = new ArrayList<>();
    private final Judge judge;
    private final long seed;
    private final int each;
    private final BiPredicate<Position, Roll> wanted;
    private final Map<Regime, List<Decision>> found = new EnumMap<>(Regime.class);
    private final Set<String> known = new HashSet<>();
    private int games;

    Sampler(List<Entrant> entrants, Judge judge, long seed, int each) {
        this(entrants, judge, seed, each, (position, roll) -> true);
    }

    /** The same with only those decisions that somebody wants. */
    Sampler(List<Entrant> entrants, Judge judge, long seed, int each, BiPredicate<Position, Roll> wanted) {
        this.entrants = List.copyOf(entrants);
        this.judge = judge;
        this.seed = seed;
        this.each = each;
        this.wanted = wanted;
        entrants.forEach(entrant -> players.add(entrant.players().get()));
        for (Regime regime : Regime.values()) {
            found.put(regime, new ArrayList<>());
        }
    }

    /** Plays until there are enough of every regime; throws if most games played do not bring that about. */
    List<Decision> sample(int mostGames) {
        while (found.values().stream().anyMatch(list -> list.size() < each)) {
            if (games == mostGames) {
                throw new IllegalArgumentException(games + " games did not give " + each + " decisions of each regime: "
                        + "ask for fewer, or name other players");
            }
            playOne();
        }
        List<Decision> all = new ArrayList<>();
        for (List<Decision> list : found.values()) {
            for (Decision d : list) {
                all.add(new Decision(all.size() + 1, d.regime(), d.position(), d.roll(), d.game()));
            }
        }
        return all;
    }

    int games() {
        return games;
    }

    private void playOne() {
        int pair = games % (players.size() * players.size());
        int first = pair / players.size();
        int second = pair % players.size();
        Map<Regime, List<Decision>> ofGame = new EnumMap<>(Regime.class);
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
                            boolean firstOnRoll = turn[0]++ % 2 == 0;
                            String who =
                                    name(firstOnRoll ? first : second) + " v " + name(firstOnRoll ? second : first);
                            consider(planes, roll, legal, who, ofGame);
                        });
        games++;
        ofGame.forEach((regime, list) -> keepOne(regime, list.get(choices.below(list.size()))));
    }

    private String name(int player) {
        return entrants.get(player).name();
    }

    private void consider(
            int[] planes, Roll roll, PlayGenerator legal, String who, Map<Regime, List<Decision>> ofGame) {
        if (legal.size() < 2) {
            return;
        }
        Position position = Position.ofPlanes(planes, 0);
        Regime regime = Regime.of(position);
        if (found.get(regime).size() < each && sensible(position, roll) > 1) {
            ofGame.computeIfAbsent(regime, r -> new ArrayList<>())
                    .add(new Decision(0, regime, position.toString(), roll.toString(), who));
        }
    }

    private long sensible(Position position, Roll roll) {
        return judge.ask(Question.of(position, roll), Effort.STATIC.withRaces(false)).plays().stream()
                .filter(play -> play.cost() >= -WITHIN)
                .count();
    }

    private void keepOne(Regime regime, Decision decision) {
        if (known.add(decision.position() + " " + decision.roll()) && wanted.test(decision.board(), decision.dice())) {
            found.get(regime).add(decision);
        }
    }
}
