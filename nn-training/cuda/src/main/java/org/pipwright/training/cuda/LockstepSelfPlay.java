package org.pipwright.training.cuda;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.function.IntConsumer;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.training.device.SelfPlayRules;
import org.pipwright.training.device.SelfPlayedGame;

/** Games of one network against itself, many at once, with what it says of some of their positions. */
final class LockstepSelfPlay {
    private static final int GAMES = 8192;
    private static final int TASK = 64;

    /** Results a game on average, at most. */
    private static final int ROOM = 80;

    /** Room besides, since the mean of few games may be far from the usual. More than any roll has. */
    private static final int SPARE = 1 << 14;

    private static final ThreadLocal<PlayGenerator> GENERATOR = ThreadLocal.withInitial(PlayGenerator::new);

    private final Accelerator accelerator;
    private final SelfPlayRules rules;
    private final int capacity;
    private final Slot[] slots;
    private final ResultJudge judge;
    private final AtomicInteger used = new AtomicInteger();

    /** One game at a time. */
    private static final class Slot {
        final int[] planes = new int[Planes.STRIDE];
        int[] takenPlanes = new int[8 * Planes.STRIDE];
        float[] chances = new float[8 * Outcomes.COUNT];
        boolean[] beginnerOnRoll = new boolean[8];
        int taken;
        long number;
        Dice dice;
        Roll roll;
        int firstTaken;
        int turns;
        int first;
        int count;
        boolean over;

        /** Whether its results found no room, so that it waits for the next turn with its roll. */
        boolean waits;

        /** Whether its position is one to take, and is not taken yet. */
        boolean toTake;

        void begin(long game, SelfPlayRules rules) {
            number = game;
            dice = Dice.ofGame(rules.seed(), 2 * game);
            firstTaken = Dice.ofGame(rules.seed(), 2 * game + 1).below(rules.every());
            turns = 0;
            taken = 0;
            over = false;
            waits = false;
            Position.start().copyTo(planes, 0);
        }

        void take(float[] answers, int at) {
            if (taken == beginnerOnRoll.length) {
                takenPlanes = Arrays.copyOf(takenPlanes, 2 * takenPlanes.length);
                chances = Arrays.copyOf(chances, 2 * chances.length);
                beginnerOnRoll = Arrays.copyOf(beginnerOnRoll, 2 * taken);
            }
            System.arraycopy(planes, 0, takenPlanes, taken * Planes.STRIDE, Planes.STRIDE);
            System.arraycopy(answers, at, chances, taken * Outcomes.COUNT, Outcomes.COUNT);
            beginnerOnRoll[taken++] = turns % 2 == 1;
            toTake = false;
        }

        /** The game, which the side that has just played won. */
        SelfPlayedGame ended() {
            int points = GameResult.of(planes, Planes.SIDE).points();
            boolean beginnerWon = turns % 2 == 1;
            return new SelfPlayedGame(
                    Arrays.copyOf(takenPlanes, taken * Planes.STRIDE),
                    Arrays.copyOf(chances, taken * Outcomes.COUNT),
                    Arrays.copyOf(beginnerOnRoll, taken),
                    points - 1 + (beginnerWon ? 0 : Outcomes.COUNT / 2));
        }
    }

    /** Room for so many games at once and so many results of a turn, at least those of any one game. */
    LockstepSelfPlay(Accelerator accelerator, SelfPlayRules rules, int games, int capacity) {
        this.accelerator = accelerator;
        this.rules = rules;
        this.capacity = capacity;
        slots = new Slot[games];
        judge = accelerator.results(capacity);
    }

    /** Plays until no more games are wanted; gives what computed. */
    static String play(
            Function<Recipe, Accelerator> accelerators, SelfPlayRules rules, Predicate<SelfPlayedGame> games) {
        ResidualNets.requireFits(rules.net());
        ResidualShape shape = ResidualNets.shape(rules.net());
        Accelerator accelerator = accelerators.apply(Recipe.ofGames(shape, shape, 1, 0));
        accelerator.add(shape, ResidualNets.weights(rules.net()));
        new LockstepSelfPlay(accelerator, rules, GAMES, ROOM * GAMES + SPARE).play(games);
        return accelerator.description();
    }

    /** Plays until no more games are wanted, and tells of them in the order of their numbers: long ones hold others up. */
    void play(Predicate<SelfPlayedGame> games) {
        Map<Long, SelfPlayedGame> early = new HashMap<>();
        long next = 0;
        long awaited = 0;
        for (int i = 0; i < slots.length; i++) {
            slots[i] = new Slot();
            slots[i].begin(next++, rules);
        }
        while (true) {
            turn();
            for (Slot slot : slots) {
                if (slot.over) {
                    early.put(slot.number, slot.ended());
                    slot.begin(next++, rules);
                }
            }
            for (; early.containsKey(awaited); awaited++) {
                if (!games.test(early.remove(awaited))) {
                    return;
                }
            }
        }
    }

    private void turn() {
        used.set(0);
        inParallel(i -> prepare(slots[i]));
        take();
        judge.judge(0, used.get());
        inParallel(i -> finish(slots[i]));
    }

    private void inParallel(IntConsumer work) {
        IntStream.range(0, (slots.length + TASK - 1) / TASK).parallel().forEach(task -> {
            for (int i = task * TASK; i < Math.min(slots.length, (task + 1) * TASK); i++) {
                work.accept(i);
            }
        });
    }

    /** Throws the dice and collects the results. */
    private void prepare(Slot slot) {
        if (!slot.waits) {
            slot.roll = slot.turns == 0 ? slot.dice.opening() : slot.dice.next();
            slot.toTake = slot.turns % rules.every() == slot.firstTaken;
            slot.turns++;
        }
        PlayGenerator generator = GENERATOR.get();
        int count = generator.generate(slot.planes, 0, slot.roll.high(), slot.roll.low());
        if (count > capacity) {
            throw new IllegalStateException("a roll has " + count + " plays, and there is room for " + capacity);
        }
        slot.count = count;
        slot.first = used.getAndUpdate(taken -> taken + count <= capacity ? taken + count : taken);
        slot.waits = slot.first + count > capacity;
        if (!slot.waits) {
            judge.results().put(Planes.STRIDE * slot.first, generator.results(), 0, Planes.STRIDE * count);
        }
    }

    /** Asks about the positions to take. */
    private void take() {
        Slot[] asked = Arrays.stream(slots).filter(slot -> slot.toTake).toArray(Slot[]::new);
        int[] positions = new int[Planes.STRIDE * asked.length];
        float[] answers = new float[Outcomes.COUNT * asked.length];
        for (int i = 0; i < asked.length; i++) {
            System.arraycopy(asked[i].planes, 0, positions, Planes.STRIDE * i, Planes.STRIDE);
        }
        accelerator.ask(0, positions, asked.length, answers);
        for (int i = 0; i < asked.length; i++) {
            asked[i].take(answers, Outcomes.COUNT * i);
        }
    }

    /** Makes the play after which the network's equity is best. */
    private void finish(Slot slot) {
        if (slot.waits) {
            return;
        }
        int best = judge.best(slot.first, slot.count);
        judge.results().get(Planes.STRIDE * best, slot.planes, 0, Planes.STRIDE);
        slot.over = (Planes.occupied(slot.planes, 0) & Planes.ON_BOARD) == 0;
        if (!slot.over) {
            Planes.swap(slot.planes, 0);
        }
    }
}
