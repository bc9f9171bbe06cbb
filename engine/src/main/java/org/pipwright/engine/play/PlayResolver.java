package org.pipwright.engine.play;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import org.pipwright.engine.play.Reading.Outcome;
import org.pipwright.engine.play.WrittenPlay.Hop;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** From a play as written to the legal play it means, or to the reason why there is none. */
final class PlayResolver {
    private final WrittenPlay written;
    private final Position position;
    private final Roll roll;
    private final List<Play> legal;

    private PlayResolver(WrittenPlay written, Position position, Roll roll) {
        this.written = written;
        this.position = position;
        this.roll = roll;
        legal = Plays.legal(position, roll);
    }

    static Play resolve(WrittenPlay written, Position position, Roll roll) {
        if (position.finished()) {
            throw new IllegalPlayException("the game is over: no roll follows");
        }
        return new PlayResolver(written, position, roll).resolve();
    }

    private Play resolve() {
        if (!Reading.fits(written.hops(), roll)) {
            throw new IllegalPlayException(WhyNot.notTheRoll(written.hops(), roll));
        }
        Reading reading = Reading.of(written.hops(), position, roll);
        if (reading.outcomes().isEmpty()) {
            throw new IllegalPlayException(WhyNot.obstructed(reading.faults(), position) + mend());
        }
        List<Outcome> allowed = reading.outcomes().stream()
                .filter(outcome -> play(outcome) != null)
                .collect(Collectors.toList());
        if (allowed.isEmpty()) {
            int steps =
                    reading.outcomes().stream().mapToInt(Outcome::steps).max().getAsInt();
            throw new IllegalPlayException(WhyNot.incomplete(steps, example(), roll));
        }
        return choose(allowed);
    }

    /** A legal play, with the hops as written among its steps if there is one. */
    private Play example() {
        return legal.stream().filter(this::holdsHops).findFirst().orElse(legal.get(0));
    }

    private boolean holdsHops(Play play) {
        List<Hop> steps = new ArrayList<>();
        play.steps().forEach(step -> steps.add(new Hop(step.from(), step.to())));
        return written.hops().stream().allMatch(steps::remove);
    }

    private String mend() {
        return legal.get(0).steps().isEmpty() ? "; this roll has no legal play: write no play" : "";
    }

    private Play play(Outcome outcome) {
        return legal.stream()
                .filter(play -> play.result().equals(outcome.result()))
                .findFirst()
                .orElse(null);
    }

    /** Hits exactly as written if possible; else only where a hop ends, the stars left out; else also on the way. */
    private Play choose(List<Outcome> allowed) {
        int stars = written.stars();
        int stops = written.stops();
        List<IntPredicate> tiers = List.of(
                hits -> hits == stars,
                hits -> (stars & ~hits) == 0 && (hits & ~stops) == 0,
                hits -> (stars & ~hits) == 0);
        for (IntPredicate tier : tiers) {
            List<Play> plays = allowed.stream()
                    .filter(outcome -> tier.test(outcome.hits()))
                    .map(this::play)
                    .distinct()
                    .collect(Collectors.toList());
            if (plays.size() > 1) {
                throw new IllegalPlayException(WhyNot.ambiguous(plays));
            }
            if (plays.size() == 1) {
                return plays.get(0);
            }
        }
        throw new IllegalPlayException(WhyNot.nothingHit(stars, allowed.get(0).hits()));
    }
}
