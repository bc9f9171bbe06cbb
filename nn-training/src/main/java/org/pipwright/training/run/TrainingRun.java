package org.pipwright.training.run;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.pipwright.engine.network.InvalidModelException;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.parallel.WorkforceException;
import org.pipwright.engine.position.Position;
import org.pipwright.training.report.Evaluation;
import org.pipwright.training.report.Metrics;
import org.pipwright.training.report.ReportPage;
import org.pipwright.training.settings.TrainingSettings;

/**
 * One training run: rounds of self-play and learning until the games or the time are used up. With a limit by games, the
 * same settings give the same networks bit for bit on the same kind of machine and Java, for any number of threads, whoever
 * plays the games, and also across stop and resume, unless training had to be rolled back; a limit by time lets the clock
 * decide how fast rates fall.
 */
public final class TrainingRun {
    /** How often a run may be rolled back before it is given up. */
    private static final int MAX_ROLLBACKS = 10;

    /** A run is evaluated first after so many seconds, then each time it is twice as old, until the usual time is shorter. */
    private static final double FIRST_EVALUATION = 10;

    /** Between two tries to write what a full disk has refused. */
    private static final long RETRY_MILLIS = 5_000;

    private final RunFolder folder;
    private final TrainingSettings settings;
    private final Schedule schedule;
    private final Crew<Integer> workers;
    private final TrainingListener listener;
    private final BooleanSupplier stop;
    private final Workforce workforce;
    private final Keeper keeper;
    private final RunKnowledge knowledge;
    private final Optional<Model> rival;
    private final Rounds rounds;
    private Map<String, String> provenance = Map.of();

    private long round;
    private long games;
    private long samples;
    private double seconds;
    private double rateScale = 1;
    private int rollbacks;
    private Model model;

    /** The net before the last round, where a stale one plays. */
    private Model stale;

    private LossWatch contactWatch = new LossWatch();
    private LossWatch raceWatch = new LossWatch();
    private Tally tally = new Tally();
    private Metrics latest;
    private double evaluatedAt;
    private double savedAt;

    private TrainingRun(
            RunFolder folder,
            Crew<Integer> workers,
            Workforce workforce,
            TrainingListener listener,
            ReportPage page,
            BooleanSupplier stop,
            long retry) {
        this.folder = folder;
        this.settings = folder.settings();
        this.schedule = new Schedule(settings);
        this.workers = workers;
        this.workforce = workforce;
        this.listener = listener;
        this.stop = stop;
        this.keeper = new Keeper(folder, listener, page, stop, retry);
        this.knowledge = new RunKnowledge(settings, folder.tables(), workers.size(), folder.teacher());
        this.rival = folder.rival();
        RoundRules rules = RoundRules.of(settings);
        Players players = workforce == null
                ? new PlayersHere(rules, knowledge, workers)
                : new PlayersElsewhere(rules, knowledge, workforce);
        this.rounds = new Rounds(players, stop);
    }

    /**
     * Runs until the limits of the settings are reached or it is told to stop; everything is written by then.
     *
     * @param folder folder of a new run, or of one to go on with
     * @param threads number of threads, at least 1
     * @param listener told how it goes
     * @param page makes the report that is kept in the folder
     * @param stop asked after each game whether to stop early; the round at hand is then left out
     * @return figures at the end
     * @throws InvalidRunException if the folder cannot be used, another process trains in it, or training diverges again and again
     */
    public static Metrics run(
            RunFolder folder, int threads, TrainingListener listener, ReportPage page, BooleanSupplier stop) {
        return run(folder, threads, null, listener, page, stop);
    }

    /**
     * Runs likewise while others play the games and make the targets, and this process learns.
     *
     * @param folder folder of a new run, or of one to go on with
     * @param threads number of threads that learn here, at least 1
     * @param workforce who plays; null for the same threads
     * @param listener told how it goes
     * @param page makes the report that is kept in the folder
     * @param stop asked again and again whether to stop early; the round at hand is then left out
     * @return figures at the end
     * @throws InvalidRunException as above
     * @throws WorkforceException if the others cannot go on; what was learned has been saved
     */
    public static Metrics run(
            RunFolder folder,
            int threads,
            Workforce workforce,
            TrainingListener listener,
            ReportPage page,
            BooleanSupplier stop) {
        return run(folder, threads, workforce, listener, page, stop, RETRY_MILLIS);
    }

    static Metrics run(
            RunFolder folder,
            int threads,
            Workforce workforce,
            TrainingListener listener,
            ReportPage page,
            BooleanSupplier stop,
            long retry) {
        return folder.locked(listener::warning, () -> {
            try (Crew<Integer> workers = Crew.numbered(threads)) {
                return trained(new TrainingRun(folder, workers, workforce, listener, page, stop, retry));
            }
        });
    }

    private static Metrics trained(TrainingRun run) {
        run.requireLimit();
        Checkpoint newest = run.folder.newest(run.listener::warning);
        try (Learners learners = new Learners(run.settings, newest == null, run.workers)) {
            return run.train(learners, newest);
        } finally {
            run.rounds.drop();
        }
    }

    private void requireLimit() {
        if (!settings.limits().any()) {
            throw new InvalidRunException("the run would never end: give a number of games, minutes or hours");
        }
    }

    private Metrics train(Learners learners, Checkpoint newest) {
        Checkpoint start = newest;
        if (start == null) {
            start = checkpoint(learners);
        } else {
            restore(learners, start);
        }
        Checkpoint safe = start;
        latest = keeper.begin(games);
        model = learners.model(Map.of());
        stale = start.stale().orElse(model);
        if (progress() >= 1 && latest != null && keeper.holdsNetOf(games)) {
            // Nothing is left to do, and the net shall go on saying where it was trained.
            keeper.report(settings);
            return latest;
        }
        provenance = Provenance.now(workers.size(), workforce);
        keeper.manifest(provenance, games);
        Rate rate = new Rate(games);
        while (progress() < 1 && !stop.getAsBoolean()) {
            double before = seconds;
            try {
                if (!oneRound(learners)) {
                    break;
                }
            } catch (InvalidModelException e) {
                safe = rollBack(learners, safe);
                continue;
            } catch (WorkforceException e) {
                save(learners);
                throw e;
            }
            listener.round(progress(), games, rate.of(games, seconds - before), secondsLeft(), latest);
            double young = Math.max(FIRST_EVALUATION, evaluatedAt);
            if (seconds - evaluatedAt >= Math.min(settings.evaluation().seconds(), young)) {
                evaluate();
            }
            if (seconds - savedAt >= settings.checkpointSeconds()) {
                safe = save(learners);
            }
        }
        save(learners);
        if (tally.games > 0 || latest == null) {
            evaluate();
        } else {
            keeper.report(settings);
        }
        return latest;
    }

    private double progress() {
        return schedule.progress(games, seconds);
    }

    private double secondsLeft() {
        double progress = progress();
        return progress == 0 ? Double.NaN : seconds * (1 - progress) / progress;
    }

    /** One round. Gives false, with nothing learned, if told to stop meanwhile; throws if weights or loss have run away. */
    private boolean oneRound(Learners learners) {
        long begin = System.nanoTime();
        boolean mayBeStale = settings.learning().staleness() > 0;
        Players.Wanted wanted = wanted(mayBeStale ? stale : model, games);
        int count = wanted.games();
        Round played = rounds.next(wanted);
        if (played == null) {
            return false;
        }
        if (mayBeStale) {
            rounds.begin(wanted(model, games + count));
        }
        Learners.Losses losses = learners.fit(played, round, rateScale * schedule.rate(progress()));
        contactWatch.add(losses.contact(), count);
        raceWatch.add(losses.race(), count);
        stale = model;
        model = learners.model(Map.of());
        double took = (System.nanoTime() - begin) / 1e9;
        round++;
        games += count;
        samples += played.contact.size() + played.race.size();
        seconds += took;
        tally.add(played, count, losses, took);
        return true;
    }

    /** The round from a game on. */
    private Players.Wanted wanted(Model player, long first) {
        int size = settings.learning().round();
        long most = settings.limits().games();
        int count = most == 0 ? size : (int) Math.min(size, most - first);
        return new Players.Wanted(player, first, count, schedule.lambda(schedule.progress(first, seconds)));
    }

    private Checkpoint rollBack(Learners learners, Checkpoint safe) {
        rounds.drop();
        rollbacks++;
        if (rollbacks > MAX_ROLLBACKS) {
            throw new InvalidRunException("training diverged " + rollbacks + " times, at last with a learning rate of "
                    + rateScale * schedule.rate(progress()) + ": set a lower rate.first");
        }
        restore(learners, safe);
        latest = keeper.begin(games);
        model = learners.model(Map.of());
        stale = safe.stale().orElse(model);
        rateScale /= 2;
        contactWatch = new LossWatch();
        raceWatch = new LossWatch();
        listener.warning(String.format(
                Locale.ROOT,
                "training diverged: back to %,d games, and on at %s of the planned learning rate",
                games,
                rateScale));
        return checkpoint(learners);
    }

    private void evaluate() {
        long begin = System.nanoTime();
        Position start = Position.start(settings.games().checkers());
        int most = settings.evaluation().games();
        Evaluation evaluation = Evaluations.of(model, knowledge, rival, start, most, games, workers.size());
        double equity = new NetworkEvaluator(model).evaluate(start).equity();
        // Time spent on this counts too, or a run of eight hours would take longer.
        seconds += (System.nanoTime() - begin) / 1e9;
        double progress = progress();
        double rate = rateScale * schedule.rate(progress);
        latest = tally.metrics(games, seconds, schedule.lambda(progress), rate, equity, evaluation);
        keeper.evaluated(latest, model, settings);
        listener.evaluated(latest, progress, secondsLeft());
        tally = new Tally();
        evaluatedAt = seconds;
    }

    private Checkpoint save(Learners learners) {
        Checkpoint checkpoint = checkpoint(learners);
        keeper.save(checkpoint, new Model(model.contact(), model.race(), notes()));
        savedAt = seconds;
        return checkpoint;
    }

    private Map<String, String> notes() {
        Map<String, String> notes = new LinkedHashMap<>();
        notes.put("games", Long.toString(games));
        notes.put("minutes", String.format(Locale.ROOT, "%.1f", seconds / 60));
        notes.put("licence", "Apache-2.0");
        notes.put("settings", settings.differences());
        notes.put("commit", provenance.get("commit"));
        String others = workforce == null ? "" : ", games " + provenance.get("games");
        notes.put("machine", provenance.get("machine") + ", " + workers.size() + " threads" + others);
        return notes;
    }

    private Checkpoint checkpoint(Learners learners) {
        return new Checkpoint(
                round,
                games,
                samples,
                seconds,
                rateScale,
                learners.contact.state(),
                learners.race.state(),
                Optional.ofNullable(settings.learning().staleness() > 0 ? stale : null));
    }

    private void restore(Learners learners, Checkpoint from) {
        try {
            learners.contact.restore(from.contact());
            learners.race.restore(from.race());
        } catch (IllegalArgumentException e) {
            throw new InvalidRunException("the checkpoint does not fit the settings (" + e.getMessage()
                    + "): hidden layers and learner must stay as the run was started");
        }
        round = from.round();
        games = from.games();
        samples = from.samples();
        seconds = from.seconds();
        evaluatedAt = seconds;
        savedAt = seconds;
        rateScale = from.rateScale();
        tally = new Tally();
    }
}
