package org.pipwright.training.cuda;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.locks.ReentrantLock;
import org.bytedeco.cuda.cudart.CUstream_st;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.ModelFile;

/** One run on a card: copying a small net, then self-play whose lookahead on the card gives the targets. */
final class CardTraining {
    private static final int QUICK_ROWS = 16384;

    private final Recipe recipe;
    private final CUstream_st stream = Gpu.stream();
    private final Products products = new Products(stream);
    private final CardNet deep;
    private final CardNet quick;
    private final List<CardNet> nets = new ArrayList<>();
    private final List<CardLearner> learners = new ArrayList<>();
    private final LessonMemory memory;
    private final Lookahead lookahead;
    private final long index;
    private final long quickPicks;
    private final long quickIndex;
    private final ReentrantLock card = new ReentrantLock(true);
    private final SplittableRandom random;
    private final CardDuel duel;
    private final long began = System.nanoTime();
    private double selfPlayBegan;
    private double debt;
    private long keptTotal;
    private long resultsTotal;
    private double nextLine;
    private double nextGauge;
    private double nextSave = 120;
    private long lessonsAtLine;
    private double lineAt;
    private volatile Throwable failure;
    private final double[] phase = new double[4];

    CardTraining(Recipe recipe) {
        this.recipe = recipe;
        random = new SplittableRandom(recipe.seed());
        deep = net(recipe.deep(), recipe.rows());
        quick = net(recipe.quick(), QUICK_ROWS);
        for (ResidualShape shape : recipe.pupils()) {
            net(shape, recipe.rows());
        }
        memory = new LessonMemory(recipe.memory(), 4 * recipe.games(), stream);
        lookahead = new Lookahead(deep, quick, recipe.margin(), recipe.games());
        int batch = LearnerSettings.USUAL.batch();
        index = Gpu.allocate(4L * batch);
        quickPicks = Gpu.allocate(4L * batch);
        quickIndex = Gpu.allocate(4L * batch);
        duel = new CardDuel(ModelFile.read(recipe.rival()), 16384);
    }

    private CardNet net(ResidualShape shape, int rows) {
        CardNet net = new CardNet(shape, shape.initial(random.split()), rows, stream, products);
        nets.add(net);
        learners.add(new CardLearner(net, LearnerSettings.USUAL));
        return net;
    }

    private double seconds() {
        return (System.nanoTime() - began) / 1e9;
    }

    /** Share of self-play that is over, 0 to 1. */
    private double progress() {
        double all = recipe.minutes() * 60 - selfPlayBegan;
        return Math.min(1, Math.max(0, (seconds() - selfPlayBegan) / all));
    }

    private float rate() {
        return (float) (recipe.rate() * (0.5 + 0.5 * Math.cos(Math.PI * progress())));
    }

    private float lambda() {
        return (float) (recipe.lambdaFirst() + (recipe.lambdaLast() - recipe.lambdaFirst()) * progress());
    }

    void run() throws IOException, InterruptedException {
        Files.createDirectories(recipe.out());
        copy();
        save("copied");
        selfPlayBegan = seconds();
        nextLine = seconds() + 10;
        nextGauge = seconds();
        lineAt = seconds();
        lessonsAtLine = memory.total();
        List<Thread> threads = new ArrayList<>();
        for (int i = 0; i < recipe.lanes(); i++) {
            long seed = random.nextLong();
            Thread thread = new Thread(() -> lane(seed));
            thread.start();
            threads.add(thread);
        }
        for (Thread thread : threads) {
            thread.join();
        }
        if (failure != null) {
            throw new IllegalStateException("training stopped", failure);
        }
        save("net");
        for (CardNet net : nets) {
            net.freeze();
            CardDuel.Result result = duel.play(net, recipe.finalPairs(), 5);
            say("final %s: %+.4f +- %.4f points a game, %d pairs, after %d steps",
                    net.shape, result.mean(), result.error(), result.pairs(), net.steps());
        }
    }

    private void copy() throws InterruptedException {
        Model model = ModelFile.read(recipe.copied());
        BlockingQueue<LessonList> queue = new ArrayBlockingQueue<>(64);
        List<Thread> players = new ArrayList<>();
        for (int i = 0; i < Runtime.getRuntime().availableProcessors(); i++) {
            SplittableRandom own = random.split();
            Thread player = new Thread(() -> {
                CopyGames games = new CopyGames(model, own);
                try {
                    while (true) {
                        LessonList list = new LessonList();
                        games.play(32768, list);
                        queue.put(list);
                    }
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
            });
            player.setDaemon(true);
            player.start();
            players.add(player);
        }
        double until = seconds() + recipe.copySeconds();
        int lists = 0;
        while (seconds() < until) {
            LessonList list = queue.take();
            memory.add(list.planes(), list.targets(), list.size());
            lists++;
            if (lists >= 8) {
                for (int k = 0; k < 8; k++) {
                    // The rate rises over the first hundred steps.
                    learn((float) (recipe.rate() * Math.min(1, (deep.steps() + 1) / 100.0)));
                }
            }
            if (lists % 50 == 0) {
                sayLosses("copying");
            }
        }
        players.forEach(Thread::interrupt);
        queue.clear();
        for (CardNet net : nets) {
            net.freeze();
        }
    }

    private void learn(float rate) {
        int batch = LearnerSettings.USUAL.batch();
        deep.kernels.with(random.nextLong()).with(batch).with(memory.size()).with(0L).with(0L).with(index).each("draw", batch);
        Lessons lessons = new Lessons(memory.planes, index, false, memory.targets, index);
        for (CardLearner learner : learners) {
            learner.learn(lessons, rate);
        }
    }

    /** The quick network learns the deep one's opinion of results that it kept itself. */
    private void teachQuick(PlaysBatch plays, float rate) {
        int batch = LearnerSettings.USUAL.batch();
        deep.kernels
                .with(random.nextLong())
                .with(batch)
                .with(lookahead.lastKept())
                .with(lookahead.keptOnCard())
                .with(quickPicks)
                .with(quickIndex)
                .each("draw", batch);
        learners.get(1)
                .learn(
                        new Lessons(plays.cardResults, quickIndex, true, lookahead.chancesOnCard(), quickPicks),
                        rate);
    }

    private void lane(long seed) {
        try {
            Gpu.use();
            Lane lane = new Lane(recipe.games(), GameRules.USUAL, seed);
            PlaysBatch plays = new PlaysBatch(recipe.games());
            Asker asker = new Asker(1024);
            LessonList lessons = new LessonList();
            while (seconds() < recipe.minutes() * 60 && failure == null) {
                double t0 = seconds();
                lane.throwDice(plays);
                plays.generate(lane.planes());
                plays.upload();
                double t1 = seconds();
                card.lock();
                double t2 = seconds();
                try {
                    onCard(lane, plays, asker, lessons);
                } finally {
                    card.unlock();
                }
                double t3 = seconds();
                lessons.clear();
                lane.advance(plays, lambda(), lessons);
                double t4 = seconds();
                phase[0] += t1 - t0;
                phase[1] += t2 - t1;
                phase[2] += t3 - t2;
                phase[3] += t4 - t3;
            }
        } catch (RuntimeException | IOException | Error e) {
            failure = e;
        }
    }

    private void onCard(Lane lane, PlaysBatch plays, Asker asker, LessonList lessons) throws IOException {
        deep.freeze();
        quick.freeze();
        lane.value(deep, asker);
        lookahead.judge(plays);
        keptTotal += lookahead.lastKept();
        resultsTotal += plays.size();
        memory.add(lessons.planes(), lessons.targets(), lessons.size());
        debt += lessons.size() * recipe.uses() / LearnerSettings.USUAL.batch();
        float rate = rate();
        for (; debt >= 1; debt--) {
            learn(rate);
        }
        teachQuick(plays, rate);
        teachQuick(plays, rate);
        Gpu.await(stream);
        if (seconds() >= nextLine) {
            line();
        }
        if (seconds() >= nextSave) {
            save("net");
            nextSave += 120;
        }
        if (seconds() >= nextGauge) {
            gauge();
        }
    }

    private void gauge() {
        StringBuilder text = new StringBuilder("gauge");
        for (CardNet net : nets) {
            net.freeze();
            CardDuel.Result result = duel.play(net, recipe.gaugePairs(), 7);
            text.append(String.format(Locale.ROOT, "  %s %+.4f +- %.4f", net.shape, result.mean(), result.error()));
        }
        say("%s", text);
        nextGauge = seconds() + recipe.gaugeSeconds();
    }

    private void line() {
        double now = seconds();
        long lessons = memory.total();
        sayLosses(String.format(
                Locale.ROOT,
                "%.0f targets/s, %.2f M targets, kept %.2f of %.1f, lambda %.2f, rate %.5f, shares %.0f/%.0f/%.0f/%.0f %%",
                (lessons - lessonsAtLine) / (now - lineAt),
                lessons / 1e6,
                keptTotal * 1.0 / resultsTotal * 18.6,
                18.6,
                lambda(),
                rate(),
                100 * phase[0] / (now - lineAt),
                100 * phase[1] / (now - lineAt),
                100 * phase[2] / (now - lineAt),
                100 * phase[3] / (now - lineAt)));
        java.util.Arrays.fill(phase, 0);
        lineAt = now;
        lessonsAtLine = lessons;
        keptTotal = 0;
        resultsTotal = 0;
        nextLine = now + 10;
    }

    private void sayLosses(String what) {
        StringBuilder text = new StringBuilder(what);
        for (int i = 0; i < nets.size(); i++) {
            double[] losses = learners.get(i).losses();
            text.append(String.format(Locale.ROOT, "  %s %.4f %.4f", nets.get(i).shape, losses[0], losses[1]));
        }
        say("%s", text);
    }

    private void say(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, "%6.1f s  ", seconds()) + String.format(Locale.ROOT, format, values));
        System.out.flush();
    }

    /** Writes the averaged weights of every network in half precision. */
    private void save(String name) throws IOException {
        for (CardNet net : nets) {
            Path file = recipe.out().resolve(name + "-" + net.shape + ".f16");
            Path fresh = recipe.out().resolve(name + "-" + net.shape + ".new");
            Files.write(fresh, HalfPrecision.bytes(net.read(net.average)));
            Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        }
    }

    /**
     * Trains.
     *
     * @param words settings as {@code key=value}
     * @throws Exception if it can't
     */
    public static void main(String[] words) throws Exception {
        Gpu.use();
        new CardTraining(Recipe.of(words)).run();
        System.exit(0);
    }
}
