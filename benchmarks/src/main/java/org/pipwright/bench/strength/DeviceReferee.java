package org.pipwright.bench.strength;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.training.device.DeviceRollouts;
import org.pipwright.training.device.RolledGame;
import org.pipwright.training.device.RolledGames;

/**
 * Finds out on a device what the plays of many decisions are worth: candidates by lookahead 1, then games of these. As many
 * decisions as fill the device are under way at once, in their order.
 */
final class DeviceReferee implements RolledGames {
    private static final int MIN_CANDIDATES = 2;

    private final DeviceRollouts rollouts;
    private final ReferenceHeader header;
    private final BooleanSupplier stop;
    private Consumer<Reference> known;
    private Iterator<RolledDecision> fresh;

    /** Decisions that have games to give, those with a later round first. */
    private final ArrayDeque<RolledDecision> ready = new ArrayDeque<>();

    private int underWay;
    private long games;

    /**
     * A referee.
     *
     * @param rollouts the device
     * @param header how
     * @param stop asked whether to stop early: those decided by then are told of, and no others
     */
    DeviceReferee(DeviceRollouts rollouts, ReferenceHeader header, BooleanSupplier stop) {
        this.rollouts = rollouts;
        this.header = header;
        this.stop = stop;
    }

    /**
     * Judges decisions.
     *
     * @param decisions which
     * @param known told of each as soon as it is known well enough, or all its games are played
     */
    void judge(List<Decision> decisions, Consumer<Reference> known) {
        this.known = known;
        fresh = candidates(decisions).iterator();
        rollouts.play(this);
    }

    /** Games that are over. */
    long games() {
        return games;
    }

    /** A legal play and the position after it, the other side on roll. */
    private record Legal(Play play, Position after) {}

    private List<RolledDecision> candidates(List<Decision> decisions) {
        List<List<Legal>> legal = new ArrayList<>();
        List<Position> positions = new ArrayList<>();
        for (Decision decision : decisions) {
            List<Legal> plays = new ArrayList<>();
            for (Play play : Plays.legal(decision.board(), decision.dice())) {
                Position after = play.next();
                plays.add(new Legal(play, after));
                if (!after.finished()) {
                    positions.add(after);
                }
            }
            legal.add(plays);
        }
        double[] equities = rollouts.lookahead(positions);
        List<RolledDecision> all = new ArrayList<>();
        int next = 0;
        for (int i = 0; i < decisions.size(); i++) {
            Map<Legal, Double> worth = new LinkedHashMap<>();
            for (Legal play : legal.get(i)) {
                // A finished game was won by the play.
                worth.put(
                        play,
                        play.after().finished() ? GameResult.of(play.after()).points() : -equities[next++]);
            }
            all.add(decision(decisions.get(i), worth));
        }
        return all;
    }

    private RolledDecision decision(Decision decision, Map<Legal, Double> worth) {
        List<Legal> order = new ArrayList<>(worth.keySet());
        order.sort(Comparator.comparingDouble(worth::get).reversed());
        List<RolledPlay> candidates = new ArrayList<>();
        Map<String, Double> others = new LinkedHashMap<>();
        for (Legal play : order) {
            double cost = worth.get(play) - worth.get(order.get(0));
            if (cost >= -header.within() || candidates.size() < MIN_CANDIDATES) {
                candidates.add(new RolledPlay(play.play(), play.after()));
            } else {
                others.put(play.play().toString(), Referee.rounded(cost));
            }
        }
        return new RolledDecision(decision, header, candidates, others);
    }

    @Override
    public Optional<RolledGame> next() {
        if (ready.isEmpty() && fresh.hasNext() && !stop.getAsBoolean()) {
            ready.add(fresh.next());
            underWay++;
        }
        if (ready.isEmpty()) {
            return Optional.empty();
        }
        RolledDecision decision = ready.peek();
        RolledGame game = decision.next();
        if (!decision.hasNext()) {
            ready.remove();
        }
        return Optional.of(game);
    }

    @Override
    public void ended(RolledGame game, double equity) {
        games++;
        RolledDecision decision = RolledDecision.of(game);
        decision.ended(game, equity);
        if (!decision.roundOver()) {
            return;
        }
        if (!decision.nextRound()) {
            underWay--;
            known.accept(decision.reference());
        } else if (stop.getAsBoolean()) {
            underWay--;
        } else {
            ready.addFirst(decision);
        }
    }

    @Override
    public boolean done() {
        return underWay == 0 && (!fresh.hasNext() || stop.getAsBoolean());
    }
}
