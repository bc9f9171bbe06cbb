package org.pipwright.training.cuda;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.evaluation.FinishedGames;
import org.pipwright.engine.evaluation.Horizon;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.training.device.DeviceAgreement;
import org.pipwright.training.device.RolledGame;
import org.pipwright.training.device.RolledGames;
import org.pipwright.training.device.RolloutRules;

/** The first plays that rollouts on an accelerator choose, to be chosen again by this machine. Any thread may add some. */
final class MadeMoves implements RollingGame.Watch {
    private static final int MAX = 500;

    /** Positions at once when they are chosen again: a few for each thread. */
    private static final int AT_ONCE = 256;

    private final Set<Made> all = new HashSet<>();
    private volatile boolean full;

    /** A position before a roll, and the one after it, the other side on roll. */
    private record Made(Position before, Roll roll, Position after) {}

    @Override
    public void chosen(RolledGame order, int[] before, Roll roll, int[] after, int at) {
        if (full || new PlayGenerator().generate(before, 0, roll.high(), roll.low()) < 2) {
            return;
        }
        synchronized (all) {
            // Trials of a play begin alike, so many decisions come again.
            all.add(new Made(Position.ofPlanes(before, 0), roll, Position.ofPlanes(after, at)));
            full = all.size() >= MAX;
        }
    }

    /** Chooses again, by all threads, and asks engine's evaluators what the others are worth. */
    DeviceAgreement compare(RolloutRules rules) {
        List<Made> made;
        synchronized (all) {
            made = List.copyOf(all);
        }
        RolloutRules once = new RolloutRules(
                rules.deep(),
                rules.quick(),
                rules.keepMargin(),
                rules.choices(),
                rules.choiceMargin(),
                1,
                rules.horizons(),
                Math.min(AT_ONCE, rules.gamesAtOnce()),
                1);
        Again again = new Again(made);
        LockstepRollouts threads = new LockstepRollouts(ThreadAccelerator::new, once, again);
        threads.play(again);
        List<Position> differing = new ArrayList<>();
        for (int i = 0; i < made.size(); i++) {
            if (!again.chosen.get(i).equals(made.get(i).after)) {
                differing.add(made.get(i).after);
                differing.add(again.chosen.get(i));
            }
        }
        double[] equities = equities(differing, threads, rules.horizons().get());
        double cost = 0;
        for (int k = 0; k < equities.length; k += 2) {
            cost += equities[k] - equities[k + 1];
        }
        return new DeviceAgreement(true, made.size(), differing.size() / 2, made.isEmpty() ? 0 : cost / made.size());
    }

    /** Equities of the side on roll: known ones, and the rest by lookahead. */
    private static double[] equities(List<Position> positions, LockstepRollouts threads, Horizon horizon) {
        double[] equities = new double[positions.size()];
        List<Position> asked = new ArrayList<>();
        List<Integer> places = new ArrayList<>();
        float[] chances = new float[6];
        for (int i = 0; i < equities.length; i++) {
            int[] planes = positions.get(i).toPlanes();
            if (FinishedGames.write(planes, 0, chances, 0) || horizon.write(planes, 0, chances, 0)) {
                equities[i] = Chances.equity(chances, 0);
            } else {
                asked.add(positions.get(i));
                places.add(i);
            }
        }
        double[] answers = threads.lookahead(asked);
        for (int k = 0; k < answers.length; k++) {
            equities[places.get(k)] = answers[k];
        }
        return equities;
    }

    /** Games of one roll, each from a position before the roll that was thrown there. */
    private static final class Again implements RolledGames, RollingGame.Watch {
        final Map<Integer, Position> chosen = new ConcurrentHashMap<>();
        private final List<Made> made;
        private int next;
        private int over;

        Again(List<Made> made) {
            this.made = made;
        }

        @Override
        public Optional<RolledGame> next() {
            return next == made.size()
                    ? Optional.empty()
                    : Optional.of(new RolledGame(made.get(next).before, dice(next), next++));
        }

        /** The roll, and others with which a race goes on to where it is known. */
        private Supplier<Roll> dice(int game) {
            Dice dice = Dice.ofGame(1, game);
            boolean[] thrown = {false};
            return () -> {
                Roll roll = thrown[0] ? dice.next() : made.get(game).roll;
                thrown[0] = true;
                return roll;
            };
        }

        @Override
        public void ended(RolledGame game, double equity) {
            over++;
        }

        @Override
        public boolean done() {
            return over == made.size();
        }

        @Override
        public void chosen(RolledGame order, int[] before, Roll roll, int[] after, int at) {
            chosen.computeIfAbsent((Integer) order.tag(), tag -> Position.ofPlanes(after, at));
        }
    }
}
