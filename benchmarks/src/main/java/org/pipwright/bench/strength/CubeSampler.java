package org.pipwright.bench.strength;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Verdict;

/**
 * Draws decisions about the cube, each position once. Every other one of a regime is for money, the rest go through some
 * scores; the cube is in the centre, and after a round of scores with the side on roll. A decision is one where a judge
 * thinks that two actions are close.
 */
final class CubeSampler extends RegimeSampler<CubeDecision> {
    /** Actions this close make a decision, in points. */
    static final double WITHIN = 0.12;

    /** Whatever is chosen, this little is no decision. */
    private static final double EVEN = 0.002;

    /** Where a take loses more than this, the game is as good as won, and to double or not says little. */
    private static final double CERTAIN = 0.5;

    /** Where doubling loses more than this nobody doubles, and whether to take is no question. */
    private static final double NEVER = 0.3;

    private static final List<String> SCORES = List.of("3,3", "5,3", "3,5", "5,5", "7,4", "4,7", "9,9", "4,2");

    private final Judge judge;
    private final Set<String> known = new HashSet<>();

    CubeSampler(List<Entrant> entrants, Judge judge, long seed, int each) {
        super(entrants, seed, each);
        this.judge = judge;
    }

    @Override
    Optional<CubeDecision> at(Moment moment, int number) {
        String away = number % 2 == 0 ? null : SCORES.get(number / 2 % SCORES.size());
        int cube = 1 + number / (2 * SCORES.size()) % 2;
        CubeDecision decision =
                new CubeDecision(0, moment.regime(), moment.position().toString(), away, cube, moment.players());
        return Optional.of(decision)
                .filter(asked -> close(judge.ask(asked.question(), Effort.STATIC.withRaces(false))));
    }

    @Override
    boolean keep(CubeDecision decision) {
        return known.add(decision.position());
    }

    @Override
    CubeDecision numbered(CubeDecision decision, int id) {
        return new CubeDecision(
                id, decision.regime(), decision.position(), decision.away(), decision.cube(), decision.game());
    }

    private static boolean close(Verdict verdict) {
        CubeValues values = verdict.cube();
        double gain = (values.doubled() - values.noDouble()) / verdict.point();
        double take = (values.doubleTake() - values.doublePass()) / verdict.point();
        boolean mayDouble = Math.abs(gain) <= WITHIN && Math.abs(gain) >= EVEN && take < CERTAIN;
        return values.mayDouble() && (mayDouble || Math.abs(take) <= WITHIN && gain > -NEVER);
    }
}
