package org.pipwright.training.cuda;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.pipwright.engine.network.Model;

/** Runs a recipe: copying a small net, then self-play in lockstep whose lookahead gives the targets. */
final class LockstepTraining {
    /** Lists of lessons before the first step, and steps a list. */
    private static final int LISTS_FIRST = 8;

    private static final int STEPS_A_LIST = 8;

    /** Steps in which the rate rises from nothing. */
    private static final double WARMING_UP = 100;

    private final Recipe recipe;
    private final Accelerator accelerator;
    private final RunBooks books;
    private final RunClock clock;
    private final Schedule schedule;
    private final Seeds seeds;
    private final Teaching teaching;
    private final Evaluations evaluations;
    private final BooleanSupplier stop;

    /** Held by the lane that uses the accelerator; guards the numbers below too. */
    private final ReentrantLock turn = new ReentrantLock(true);

    private double copied;
    private long targets;
    private long games;
    private double nextSave;
    private volatile Throwable failure;

    /**
     * A run whose networks were added to the accelerator.
     *
     * @param from where it stands
     */
    LockstepTraining(
            Recipe recipe,
            Accelerator accelerator,
            RunBooks books,
            RunState from,
            Seeds seeds,
            RunClock clock,
            Schedule schedule,
            Evaluations evaluations,
            BooleanSupplier stop) {
        this.recipe = recipe;
        this.accelerator = accelerator;
        this.books = books;
        this.clock = clock;
        this.schedule = schedule;
        this.seeds = seeds;
        this.evaluations = evaluations;
        this.stop = stop;
        teaching = new Teaching(recipe, accelerator, seeds);
        copied = from.copied();
        targets = from.targets();
        games = from.games();
    }

    /** Runs to the end, or until told to stop; all is written by then. */
    void run(Model copiedNet, int threads) {
        if (Double.isNaN(schedule.began()) && !recipe.startsGiven()) {
            copy(copiedNet, threads);
        }
        if (!stop.getAsBoolean()) {
            selfPlay();
        }
        books.save(state(), true);
        if (!stop.getAsBoolean()) {
            Optional<Figures> last = evaluations.last(targets, games);
            last.ifPresent(figures -> {
                books.evaluated(figures, accelerator.state(Recipe.DEEP));
                books.finish();
            });
        }
        books.report();
    }

    private void copy(Model model, int threads) {
        double began = clock.seconds() - copied;
        List<Integer> copying = recipe.copying();
        try (Copying games = new Copying(model, 4 * recipe.learner().batch(), threads, seeds)) {
            int lists = 0;
            while (copied < recipe.copySeconds() && !stop.getAsBoolean()) {
                LessonList list = games.next();
                accelerator.remember(list);
                targets += list.size();
                lists++;
                for (int k = 0; k < STEPS_A_LIST && lists >= LISTS_FIRST; k++) {
                    double share = Math.min(1, (accelerator.steps(copying.get(0)) + 1) / WARMING_UP);
                    accelerator.learn(seeds.next(), (float) (recipe.rate() * share), copying);
                }
                if (lists % 50 == 0) {
                    evaluations.losses("copying");
                }
                copied = clock.seconds() - began;
            }
        }
        IntStream.range(0, recipe.shapes().size()).forEach(accelerator::freeze);
    }

    private void selfPlay() {
        schedule.begin();
        evaluations.begin(targets, books.lastEvaluated());
        nextSave = clock.seconds() + recipe.checkpointSeconds();
        List<Thread> threads = new ArrayList<>();
        for (int i = 0; i < recipe.lanes(); i++) {
            LaneJudge judge = accelerator.lane();
            long seed = seeds.next();
            Thread thread = new Thread(() -> lane(new Lane(recipe.games(), recipe.rules(), seed), judge));
            thread.setName("pipwright-lane");
            threads.add(thread);
        }
        threads.forEach(Thread::start);
        threads.forEach(LockstepTraining::join);
        if (failure instanceof RuntimeException e) {
            throw e;
        }
        if (failure != null) {
            throw new IllegalStateException("training stopped", failure);
        }
    }

    private static void join(Thread thread) {
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while training", e);
        }
    }

    private boolean over() {
        return failure != null || stop.getAsBoolean() || schedule.progress() >= 1;
    }

    private void lane(Lane lane, LaneJudge judge) {
        try {
            accelerator.use();
            LessonList lessons = new LessonList();
            long finished = 0;
            while (!over()) {
                lane.throwDice(judge.plays());
                judge.plays().generate(lane.planes());
                judge.upload();
                RunState due;
                turn.lock();
                try {
                    games += lane.finishedGames() - finished;
                    finished = lane.finishedGames();
                    due = onAccelerator(lane, judge, lessons);
                } finally {
                    turn.unlock();
                }
                if (due != null) {
                    // The file is written while the other lanes go on.
                    books.save(due, false);
                }
                lessons.clear();
                lane.advance(judge.plays(), schedule.lambda(), lessons);
            }
        } catch (RuntimeException | Error e) {
            failure = e;
        }
    }

    /** A lane's turn; the state to be written if a checkpoint is due, else null. */
    private RunState onAccelerator(Lane lane, LaneJudge judge, LessonList lessons) {
        if (!recipe.teachOnly()) {
            accelerator.freeze(Recipe.DEEP);
            accelerator.freeze(Recipe.QUICK);
        }
        lane.value(accelerator);
        judge.judge();
        evaluations.judged(recipe.games(), judge.kept(), judge.plays().size());
        accelerator.remember(lessons);
        targets += lessons.size();
        teaching.turn(judge, lessons.size(), schedule.rate());
        accelerator.await();
        boolean evaluating = evaluations.evaluationIsDue();
        if (evaluating || evaluations.lineIsDue()) {
            evaluations.line(targets);
        }
        if (evaluating) {
            evaluations
                    .evaluate(targets, games)
                    .ifPresent(figures -> books.evaluated(figures, accelerator.state(Recipe.DEEP)));
        }
        if (clock.seconds() < nextSave) {
            return null;
        }
        nextSave = clock.seconds() + recipe.checkpointSeconds();
        return state();
    }

    private RunState state() {
        List<NetState> nets = IntStream.range(0, recipe.shapes().size())
                .mapToObj(accelerator::state)
                .toList();
        return new RunState(clock.seconds(), copied, schedule.began(), targets, games, seeds.given(), nets);
    }
}
