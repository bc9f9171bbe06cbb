package org.pipwright.training.cuda;

import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.pipwright.engine.duel.DuelSettings;
import org.pipwright.engine.duel.Tally;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/**
 * Pairs of games, many at once, whose sides are networks of the accelerator or players of this machine. Both games of a
 * pair have the same dice, with the sides exchanged; they are those of the same duel on the processor.
 */
final class LockstepDuel {
    private static final int TASK = 64;

    /** Results a game on average, at most. */
    private static final int ROOM = 80;

    /** Room besides, since the mean of few games may be far from the usual. More than any roll has. */
    private static final int SPARE = 1 << 14;

    /** Decisions of the first so many games are kept, to be made again by this machine. */
    private static final int WATCHED = 80;

    private final Accelerator accelerator;
    private final int capacity;
    private final Slot[] slots;

    /** What A's network and B's are asked about; made when they are first needed. */
    private final ResultJudge[] judges = new ResultJudge[2];

    private final AtomicInteger[] used = {new AtomicInteger(), new AtomicInteger()};
    private List<DuelSide> sides;
    private List<MadeDecisions> decisions;
    private ThreadLocal<Hands> hands;

    /** One game at a time. */
    private static final class Slot {
        final int[] planes = new int[8];
        long number = -1;
        Dice dice;
        Dice ties;
        Roll roll;
        int turns;
        int toPlay;
        int first;
        int count;
        boolean over;

        /** Whether its results found no room, so that it waits for the next turn with its roll. */
        boolean waits;
    }

    /** What a thread of this machine plays with. */
    private static final class Hands {
        final PlayGenerator generator = new PlayGenerator();
        final Player[] players = new Player[2];

        Hands(List<DuelSide> sides) {
            for (int side = 0; side < 2; side++) {
                players[side] = sides.get(side) instanceof DuelSide.OnThreads threads
                        ? threads.players().get()
                        : null;
            }
        }
    }

    /** Room for so many games at once. */
    LockstepDuel(int games, Accelerator accelerator) {
        this(games, ROOM * games + SPARE, accelerator);
    }

    /** The same with room for so many results of a turn, at least those of any one game. */
    LockstepDuel(int games, int capacity, Accelerator accelerator) {
        this.accelerator = accelerator;
        this.capacity = capacity;
        slots = new Slot[games];
        for (int i = 0; i < games; i++) {
            slots[i] = new Slot();
        }
    }

    /**
     * Plays a duel.
     *
     * @param a one side
     * @param b the other
     * @param settings what decides it; luck is not measured, and there is no cube
     * @param progress told of the tally so far after each turn of all games
     * @param stop asked before each turn
     * @return all pairs, or those up to the verdict or the stop
     */
    Tally play(DuelSide a, DuelSide b, DuelSettings settings, Consumer<Tally> progress, BooleanSupplier stop) {
        sides = List.of(a, b);
        decisions = List.of(new MadeDecisions(), new MadeDecisions());
        hands = ThreadLocal.withInitial(() -> new Hands(sides));
        for (int side = 0; side < 2; side++) {
            if (sides.get(side) instanceof DuelSide.OnAccelerator && judges[side] == null) {
                judges[side] = accelerator.results(capacity);
            }
        }
        PairCount count = new PairCount(settings);
        long next = 0;
        for (Slot slot : slots) {
            begin(slot, next++, settings);
        }
        while (!count.enough() && !stop.getAsBoolean()) {
            turn(settings);
            for (Slot slot : slots) {
                if (slot.over) {
                    int won = GameResult.of(slot.planes, Planes.SIDE).points();
                    count.add(slot.number, slot.toPlay == 0 ? won : -won, slot.turns);
                    begin(slot, next++, settings);
                }
            }
            progress.accept(count.tally());
        }
        return count.tally();
    }

    /** Decisions that a side's network made in the first games of the last duel. */
    MadeDecisions decisions(int side) {
        return decisions.get(side);
    }

    private static void begin(Slot slot, long number, DuelSettings settings) {
        slot.over = false;
        slot.number = number < 2 * settings.pairs() ? number : -1;
        if (slot.number >= 0) {
            slot.dice = Dice.ofGame(settings.seed(), number / 2);
            slot.ties = Dice.ofGame(~settings.seed(), number / 2);
            slot.turns = 0;
            slot.waits = false;
            slot.toPlay = (int) (number % 2);
            settings.contest().start().copyTo(slot.planes, 0);
        }
    }

    /** A turn of every game. */
    private void turn(DuelSettings settings) {
        used[0].set(0);
        used[1].set(0);
        inParallel(i -> prepare(slots[i], settings));
        for (int side = 0; side < 2; side++) {
            if (used[side].get() > 0) {
                judges[side].judge(((DuelSide.OnAccelerator) sides.get(side)).net(), used[side].get());
            }
        }
        inParallel(i -> finish(slots[i]));
    }

    private void inParallel(IntConsumer work) {
        int tasks = (slots.length + TASK - 1) / TASK;
        IntStream.range(0, tasks).parallel().forEach(task -> {
            for (int i = task * TASK; i < Math.min(slots.length, (task + 1) * TASK); i++) {
                if (slots[i].number >= 0) {
                    work.accept(i);
                }
            }
        });
    }

    /** Throws the dice; a player of this machine plays at once, the results of a network are collected. */
    private void prepare(Slot slot, DuelSettings settings) {
        Hands mine = hands.get();
        if (!slot.waits) {
            slot.roll = slot.turns == 0 && settings.contest().openingRoll() ? slot.dice.opening() : slot.dice.next();
            slot.turns++;
        }
        slot.count = mine.generator.generate(slot.planes, 0, slot.roll.high(), slot.roll.low());
        Player player = mine.players[slot.toPlay];
        if (player != null) {
            int chosen = player.choose(slot.planes, 0, mine.generator, slot.ties);
            System.arraycopy(mine.generator.results(), 8 * chosen, slot.planes, 0, 8);
            return;
        }
        int count = slot.count;
        if (count > capacity) {
            throw new IllegalStateException("a roll has " + count + " plays, and there is room for " + capacity);
        }
        slot.first = used[slot.toPlay].getAndUpdate(taken -> taken + count <= capacity ? taken + count : taken);
        slot.waits = slot.first + count > capacity;
        if (slot.waits) {
            return;
        }
        judges[slot.toPlay].results().put(8 * slot.first, mine.generator.results(), 0, 8 * slot.count);
    }

    private void finish(Slot slot) {
        if (slot.waits) {
            return;
        }
        if (sides.get(slot.toPlay) instanceof DuelSide.OnAccelerator) {
            choose(slot, judges[slot.toPlay]);
        }
        slot.over = (Planes.occupied(slot.planes, 0) & Planes.ON_BOARD) == 0;
        if (!slot.over) {
            Planes.swap(slot.planes, 0);
            slot.toPlay = 1 - slot.toPlay;
        }
    }

    private void choose(Slot slot, ResultJudge judge) {
        int best = judge.best(slot.first, slot.count);
        int[] result = new int[8];
        judge.results().get(8 * best, result, 0, 8);
        if (slot.number < WATCHED && slot.count > 1) {
            decisions.get(slot.toPlay).add(slot.planes, 0, slot.roll, result);
        }
        System.arraycopy(result, 0, slot.planes, 0, 8);
    }
}
