package org.pipwright.bench.strength;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * Draws decisions about plays, each position and roll once. A decision has at least two plays that a judge thinks sensible.
 */
final class Sampler extends RegimeSampler<Decision> {
    /** Plays this close to the judge's best are sensible, in points per game. */
    static final double WITHIN = 0.12;

    private final Judge judge;
    private final BiPredicate<Position, Roll> wanted;
    private final Set<String> known = new HashSet<>();

    Sampler(List<Entrant> entrants, Judge judge, long seed, int each) {
        this(entrants, judge, seed, each, (position, roll) -> true);
    }

    /** The same with only those decisions that somebody wants. */
    Sampler(List<Entrant> entrants, Judge judge, long seed, int each, BiPredicate<Position, Roll> wanted) {
        super(entrants, seed, each);
        this.judge = judge;
        this.wanted = wanted;
    }

    @Override
    Optional<Decision> at(Moment moment, int number) {
        return moment.legalPlays() < 2 || sensible(moment.position(), moment.roll()) < 2
                ? Optional.empty()
                : Optional.of(new Decision(
                        0,
                        moment.regime(),
                        moment.position().toString(),
                        moment.roll().toString(),
                        moment.players()));
    }

    private long sensible(Position position, Roll roll) {
        return judge.ask(Question.of(position, roll), Effort.STATIC.withRaces(false)).plays().stream()
                .filter(play -> play.cost() >= -WITHIN)
                .count();
    }

    @Override
    boolean keep(Decision decision) {
        return known.add(decision.position() + " " + decision.roll()) && wanted.test(decision.board(), decision.dice());
    }

    @Override
    Decision numbered(Decision decision, int id) {
        return new Decision(id, decision.regime(), decision.position(), decision.roll(), decision.game());
    }
}
