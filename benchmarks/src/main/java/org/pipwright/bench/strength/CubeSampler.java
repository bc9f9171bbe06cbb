package org.pipwright.bench.strength;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;

/**
 * Draws decisions about the cube from games without one: all ordered pairs of players in turn, at most one decision of each
 * regime from a game, each position once. Every other one of a regime is for money, the rest go through some scores; the
 * cube is in the centre, and after a round of scores with the side on roll. A decision is one where a judge thinks that two actions
 * are close.
 */
final class CubeSampler {
    /** Actions this close make a decision, in points. */
    static final double WITHIN = 0.12;

    /** Whatever is chosen, this little is no decision. */
    private static final double EVEN = 0.002;

    /** Where a take loses more than this, the game is as good as won, and to double or not says little. */
    private static final double CERTAIN = 0.5;

    /** Where doubling loses more than this nobody doubles, and whether to take is no question. */
    private static final double NEVER = 0.3;

    private static final List<String> SCORES = List.of("3,3", "5,3", "3,5", "5,5", "7,4", "4,7", "9,9", "4,2");

    private final List<Entrant> entrants;
    private final List<Player> players = new ArrayList<>();
    private final Judge judge;
    private final long seed;
    private final int each;
    private final Map<Regime, List<CubeDecision>> found = new EnumMap<>(Regime.class);
    private final Set<String> known = new HashSet<>();
    private int games;

    CubeSampler(List<Entrant> entrants, Judge judge, long seed, int each) {
        this.entrants = List.copyOf(entrants);
        this.judge = judge;
        this.seed = seed;
        this.each = each;
        entrants.forEach(entrant -> players.add(entrant.players().get()));
        for (Regime regime : Regime.values()) {
            found.put(regime, new ArrayList<>());
        }
    }

    /** Plays until there are enough of every regime; throws if most games played do not bring that about. */
    List<CubeDecision> sample(int mostGames) {
        while (found.values().stream().anyMatch(list -> list.size() < each)) {
            if (games == mostGames) {
                throw new IllegalArgumentException(games + " games did not give " + each + " decisions of each regime: "
                        + "ask for fewer, or name other players");
            }
            playOne();
        }
        List<CubeDecision> all = new ArrayList<>();
        for (List<CubeDecision> list : found.values()) {
            for (CubeDecision d : list) {
                all.add(new CubeDecision(all.size() + 1, d.regime(), d.position(), d.away(), d.cube(), d.game()));
            }
        }
        return all;
    }

    private void playOne() {
        int pair = games % (players.size() * players.size());
        int first = pair / players.size();
        int second = pair % players.size();
        Map<Regime, List<CubeDecision>> ofGame = new EnumMap<>(Regime.class);
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
                            String who = entrants.get(onRoll).name() + " v "
                                    + entrants.get(first + second - onRoll).name();
                            consider(Position.ofPlanes(planes, 0), who, ofGame);
                        });
        games++;
        ofGame.forEach((regime, list) -> {
            CubeDecision one = list.get(choices.below(list.size()));
            if (known.add(one.position())) {
                found.get(regime).add(one);
            }
        });
    }

    private void consider(Position position, String who, Map<Regime, List<CubeDecision>> ofGame) {
        Regime regime = Regime.of(position);
        int number = found.get(regime).size();
        if (number < each) {
            String away = number % 2 == 0 ? null : SCORES.get(number / 2 % SCORES.size());
            CubeDecision decision =
                    new CubeDecision(0, regime, position.toString(), away, 1 + number / (2 * SCORES.size()) % 2, who);
            if (close(judge.ask(decision.question(), Effort.STATIC.withRaces(false)))) {
                ofGame.computeIfAbsent(regime, r -> new ArrayList<>()).add(decision);
            }
        }
    }

    private static boolean close(Verdict verdict) {
        CubeValues values = verdict.cube();
        double gain = (values.doubled() - values.noDouble()) / verdict.point();
        double take = (values.doubleTake() - values.doublePass()) / verdict.point();
        boolean mayDouble = Math.abs(gain) <= WITHIN && Math.abs(gain) >= EVEN && take < CERTAIN;
        return values.mayDouble() && (mayDouble || Math.abs(take) <= WITHIN && gain > -NEVER);
    }
}
