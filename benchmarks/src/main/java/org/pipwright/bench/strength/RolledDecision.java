package org.pipwright.bench.strength;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import org.pipwright.engine.rollout.TrialDice;
import org.pipwright.engine.statistics.RunningMean;
import org.pipwright.training.device.RolledGame;

/**
 * A decision whose candidates are being rolled out on a device, a round of games at a time. After each round more games are
 * given to those whose differences to the best are not known well enough yet, and to the best.
 */
final class RolledDecision {
    /** Fewer trials say too little of their own spread to stop on: each first throw comes this often. */
    static final int FIRST = 2 * TrialDice.THROWS;

    /** Rounds end at every first throw once more, and bring at most so many trials. */
    private static final int MAX_MORE = 8 * TrialDice.THROWS;

    private final Decision decision;
    private final ReferenceHeader header;
    private final List<RolledPlay> candidates;
    private final Map<String, Double> others;
    private final Queue<RolledGame> games = new ArrayDeque<>();
    private int underWay;

    /** What a game is known by. */
    private record Tag(RolledDecision decision, RolledPlay play, int trial) {}

    RolledDecision(Decision decision, ReferenceHeader header, List<RolledPlay> candidates, Map<String, Double> others) {
        this.decision = decision;
        this.header = header;
        this.candidates = candidates;
        this.others = others;
        candidates.forEach(candidate -> candidate.extend(Math.min(FIRST, header.trials())));
        deal();
    }

    /** The decision that a game is for. */
    static RolledDecision of(RolledGame game) {
        return ((Tag) game.tag()).decision;
    }

    /** Games of this round that are still to be given. */
    boolean hasNext() {
        return !games.isEmpty();
    }

    RolledGame next() {
        underWay++;
        return games.remove();
    }

    /** A game is over: its equity is that of the side on roll after the play. */
    void ended(RolledGame game, double equity) {
        Tag tag = (Tag) game.tag();
        tag.play.put(tag.trial, -equity);
        underWay--;
    }

    /** Whether all games of the round are over. */
    boolean roundOver() {
        return games.isEmpty() && underWay == 0;
    }

    /** Ends a round; whether another one is needed, which is ready then. */
    boolean nextRound() {
        candidates.forEach(RolledPlay::complete);
        RolledPlay best = best();
        for (RolledPlay candidate : candidates) {
            if (candidate != best) {
                int wanted = wanted(candidate, best);
                candidate.extend(wanted);
                best.extend(wanted);
            }
        }
        deal();
        return !games.isEmpty();
    }

    private RolledPlay best() {
        RolledPlay best = candidates.get(0);
        for (RolledPlay candidate : candidates) {
            best = candidate.less(best).mean() > 0 ? candidate : best;
        }
        return best;
    }

    /** Trials that a candidate and the best should have; 0 if they are enough. */
    private int wanted(RolledPlay candidate, RolledPlay best) {
        RunningMean behind = candidate.less(best);
        if (header.exactEnough(behind.mean(), behind.standardError())) {
            return 0;
        }
        double times = behind.standardError() / header.allowed(behind.mean());
        double all = Math.min(behind.count() * times * times, behind.count() + MAX_MORE);
        int rounds = (int) Math.ceil(all / TrialDice.THROWS);
        return Math.min(header.trials(), rounds * TrialDice.THROWS);
    }

    /** Each decision has dice of its own, so that errors of different decisions are independent. */
    private void deal() {
        for (RolledPlay candidate : candidates) {
            for (int trial = candidate.trials(); trial < candidate.target(); trial++) {
                TrialDice dice = new TrialDice(header.seed() + decision.id(), trial);
                games.add(new RolledGame(candidate.after, dice, new Tag(this, candidate, trial)));
            }
        }
    }

    /** What is known, the best play first. Equities are the best one's less what the others are behind. */
    Reference reference() {
        RolledPlay best = best();
        double equity = best.equity().mean();
        List<Reference.Rolled> plays = new ArrayList<>();
        for (RolledPlay candidate : candidates) {
            RunningMean behind = candidate.less(best);
            double mean = candidate == best ? 0 : Math.min(0, behind.mean());
            plays.add(new Reference.Rolled(
                    candidate.play.toString(),
                    Referee.rounded(equity + mean),
                    Referee.rounded(mean),
                    candidate == best ? 0 : Referee.rounded(behind.standardError())));
        }
        plays.sort(Comparator.comparingDouble(Reference.Rolled::behind).reversed());
        return new Reference(
                decision.id(),
                decision.regime(),
                decision.position(),
                decision.roll(),
                decision.game(),
                best.trials(),
                plays,
                others);
    }
}
