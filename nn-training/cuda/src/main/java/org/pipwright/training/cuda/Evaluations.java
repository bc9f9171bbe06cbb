package org.pipwright.training.cuda;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;

/** Measures how a run goes: lines of losses and rates every ten seconds, strength in duels now and then. */
final class Evaluations {
    /** Dice apart from those of self-play, and others each time: so the errors of a curve's points are independent. */
    private static final long SEED = 7;

    private static final long FINAL_SEED = 5;

    private static final int MAX_GAMES = 16384;
    private static final double LINE_SECONDS = 10;

    private final Recipe recipe;
    private final Accelerator accelerator;
    private final RunClock clock;
    private final Schedule schedule;
    private final Consumer<String> say;
    private final LockstepDuel duel;
    private final DuelSide rival;
    private final BooleanSupplier stop;
    private final List<double[]> losses = new ArrayList<>();
    private double nextLine;
    private double nextEvaluation;
    private double lineAt;
    private long targetsAtLine;
    private long kept;
    private long results;
    private long rolls;
    private double speed = Double.NaN;
    private double keptARoll;

    Evaluations(
            Recipe recipe,
            Accelerator accelerator,
            RunClock clock,
            Schedule schedule,
            Model rival,
            Consumer<String> say,
            BooleanSupplier stop) {
        this.recipe = recipe;
        this.accelerator = accelerator;
        this.clock = clock;
        this.schedule = schedule;
        this.say = say;
        this.rival = new DuelSide.OnThreads(() -> new EvaluatingPlayer(new NetworkEvaluator(rival)));
        this.stop = stop;
        int pairs = Math.max(recipe.evaluation().pairs(), recipe.evaluation().finalPairs());
        duel = new LockstepDuel(Math.min(MAX_GAMES, 2 * pairs), accelerator);
        recipe.shapes().forEach(shape -> losses.add(new double[] {Double.NaN, Double.NaN}));
    }

    /**
     * Self-play begins, or goes on.
     *
     * @param targets made so far
     * @param evaluated when strength was evaluated last; not a number if it never was, and then it is at once
     */
    void begin(long targets, double evaluated) {
        lineAt = clock.seconds();
        nextLine = lineAt + LINE_SECONDS;
        nextEvaluation = Double.isNaN(evaluated)
                ? lineAt
                : evaluated + recipe.evaluation().seconds();
        targetsAtLine = targets;
    }

    /** A lane was judged. */
    void judged(int positions, int judged, int of) {
        rolls += 21L * positions;
        kept += judged;
        results += of;
    }

    boolean evaluationIsDue() {
        return clock.seconds() >= nextEvaluation;
    }

    boolean lineIsDue() {
        return clock.seconds() >= nextLine;
    }

    /** Says losses since the last line. */
    void line(long targets) {
        double now = clock.seconds();
        double made = (targets - targetsAtLine) / Math.max(1e-9, now - lineAt);
        // A game's first targets come many turns after it has begun: until then there is nothing to show.
        speed = made == 0 ? Double.NaN : made;
        keptARoll = rolls == 0 ? Double.NaN : (double) kept / rolls;
        losses(String.format(
                Locale.ROOT,
                "%.1f %%, %,.0f targets/s, %.2f M targets, kept %.2f of %.1f replies, lambda %.2f, rate %.5f",
                100 * schedule.progress(),
                made,
                targets / 1e6,
                keptARoll,
                rolls == 0 ? Double.NaN : (double) results / rolls,
                schedule.lambda(),
                schedule.rate()));
        lineAt = now;
        nextLine = now + LINE_SECONDS;
        targetsAtLine = targets;
        kept = 0;
        results = 0;
        rolls = 0;
    }

    /** Says losses since they were last said: cross-entropy in nats, error of equity in points. */
    void losses(String what) {
        StringBuilder text = new StringBuilder(what);
        for (int net : recipe.learning()) {
            double[] since = accelerator.losses(net);
            losses.set(net, since);
            text.append("  ").append(recipe.name(net));
            text.append(
                    Double.isNaN(since[0])
                            ? " no steps"
                            : String.format(Locale.ROOT, " %.4f %.4f", since[0], since[1]));
        }
        say(text.toString());
    }

    /** Evaluates strength; empty if told to stop meanwhile. */
    Optional<Figures> evaluate(long targets, long games) {
        Optional<Figures> figures = figures(targets, games, recipe.evaluation().pairs(), SEED + targets, "strength");
        nextEvaluation = clock.seconds() + recipe.evaluation().seconds();
        return figures;
    }

    /** Evaluates strength at the end; empty if told to stop meanwhile. */
    Optional<Figures> last(long targets, long games) {
        return figures(targets, games, recipe.evaluation().finalPairs(), FINAL_SEED, "final");
    }

    private Optional<Figures> figures(long targets, long games, int pairs, long seed, String what) {
        List<Figures.OfNet> nets = new ArrayList<>();
        StringBuilder text = new StringBuilder(what);
        for (int net = 0; net < recipe.shapes().size(); net++) {
            double points = Double.NaN;
            double error = Double.NaN;
            if (recipe.learning().contains(net)) {
                accelerator.freeze(net);
                Tally tally = duel.play(
                        new DuelSide.OnAccelerator(net), rival, DuelSettings.fullGames(pairs, seed), soFar -> {}, stop);
                if (tally.pairs() < pairs) {
                    return Optional.empty();
                }
                points = tally.values().mean();
                error = tally.values().standardError();
                text.append(String.format(Locale.ROOT, "  %s %+.4f ± %.4f", recipe.name(net), points, error));
            }
            nets.add(new Figures.OfNet(losses.get(net)[0], losses.get(net)[1], points, error));
        }
        say(text + String.format(Locale.ROOT, " points a game, %,d pairs", pairs));
        return Optional.of(new Figures(
                clock.seconds(),
                targets,
                games,
                speed,
                schedule.lambda(),
                schedule.rate(),
                keptARoll,
                pairs,
                List.copyOf(nets)));
    }

    private void say(String text) {
        say.accept(String.format(Locale.ROOT, "%7.1f s  %s", clock.seconds(), text));
    }
}
