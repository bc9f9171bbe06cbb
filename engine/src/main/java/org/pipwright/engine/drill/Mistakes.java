package org.pipwright.engine.drill;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.record.Heading;
import org.pipwright.engine.review.Decision;
import org.pipwright.engine.review.Moment;
import org.pipwright.engine.review.Review;
import org.pipwright.engine.review.ReviewedTurn;

/** Takes the mistakes out of reviewed records. */
public final class Mistakes {
    private final double cost;
    private final Predicate<String> players;
    private final List<Mistake> found = new ArrayList<>();

    private record Mistake(double points, Candidate candidate) {}

    /**
     * Mistakes of some size and of some players.
     *
     * @param cost what they give away at least, in points; more than 0
     * @param players whose mistakes, by their names
     */
    public Mistakes(double cost, Predicate<String> players) {
        this.cost = cost;
        this.players = players;
    }

    /**
     * Adds those of a record.
     *
     * @param file the record, as the user named it
     * @param review what was found in it
     */
    public void add(String file, Review review) {
        Heading heading = review.record().heading();
        for (ReviewedTurn turn : review.turns()) {
            for (Decision decision : turn.decisions()) {
                String player = heading.name(decision.side());
                if (decision.counted() && -decision.points() >= cost && players.test(player)) {
                    Moment moment = turn.moment();
                    Origin origin = new Origin.Recorded(file, moment.game() + 1, moment.turn() + 1, player);
                    candidate(origin, moment, decision.kind())
                            .ifPresent(candidate -> found.add(new Mistake(decision.points(), candidate)));
                }
            }
        }
    }

    private static Optional<Candidate> candidate(Origin origin, Moment moment, Decision.Kind kind) {
        if (kind == Decision.Kind.PLAY) {
            return moment.played()
                    .map(turn -> new Candidate(
                            origin,
                            Question.of(moment.position(), turn.roll()).with(moment.stakes(), moment.rolling()),
                            false,
                            Optional.of(turn.play().result()),
                            Optional.empty()));
        }
        boolean answering = kind == Decision.Kind.ANSWER;
        Optional<CubeAction> done =
                answering ? moment.answer() : Optional.of(moment.doubled() ? CubeAction.DOUBLE : CubeAction.ROLL);
        // An exercise offers two choices, and a beaver is neither.
        return done.filter(action -> action != CubeAction.BEAVER)
                .map(action -> new Candidate(
                        origin,
                        Question.before(moment.position()).with(moment.stakes(), moment.cube()),
                        answering,
                        Optional.empty(),
                        done));
    }

    /**
     * What was found so far.
     *
     * @return the costliest first; equals in the order of the records
     */
    public List<Candidate> costliestFirst() {
        return found.stream()
                .sorted(Comparator.comparingDouble(Mistake::points))
                .map(Mistake::candidate)
                .toList();
    }
}
