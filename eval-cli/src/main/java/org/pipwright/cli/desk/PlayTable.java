package org.pipwright.cli.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.files.Reason;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.play.IllegalPlayException;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.record.Entry;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.IllegalEntryException;
import org.pipwright.engine.record.OpenRecord;
import org.pipwright.engine.record.Stand;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/**
 * A game, match or session at which two sit down: people, nets, or one of each. Whatever happens is written to disk before
 * it is shown. The dice of each turn are settled by a seed, so that taking a play back gives the same roll again. Safe for
 * several threads; nets think beside the lock, so that the table can be seen and played back meanwhile.
 */
final class PlayTable {
    /** A page that waits for a net asks again after this time at most. */
    private static final Duration WAIT = Duration.ofSeconds(2);

    private final List<Seat> seats;
    private final long seed;
    private final RecordKeeper keeper;
    private OpenRecord open;
    private boolean thrown;
    private Thought<Verdict> thought;
    private Thought<Verdict> opinion;

    /**
     * A table.
     *
     * @param open what has been played so far
     * @param seats who plays
     * @param seed seed of the dice
     * @param keeper where the record is kept
     */
    PlayTable(OpenRecord open, List<Seat> seats, long seed, RecordKeeper keeper) {
        this.open = open;
        this.seats = List.copyOf(seats);
        this.seed = seed;
        this.keeper = keeper;
    }

    /** How the game stands. */
    synchronized Stand stand() {
        return open.stand();
    }

    /** What has been played. */
    synchronized GameRecord record() {
        return open.record();
    }

    /** Where the record is kept as text. */
    Path file() {
        return keeper.file();
    }

    /** Who sits on a side. */
    Seat seat(int side) {
        return seats.get(side);
    }

    /** Who has to act: before the first roll the winner of the throw for it. */
    synchronized int side() {
        Stand stand = open.stand();
        return stand.begun() ? stand.decides() : starter();
    }

    /** Whether a net has to act. */
    synchronized boolean netToAct() {
        return !open.stand().over() && seats.get(side()).net().isPresent();
    }

    /** The dice on the table; empty before they are thrown. */
    synchronized Optional<Roll> roll() {
        return thrown ? Optional.of(dice()) : Optional.empty();
    }

    private Dice turnDice() {
        return Dice.ofGame(seed + open.stand().number(), open.turns());
    }

    private Roll dice() {
        return open.turns() == 0 ? turnDice().opening() : turnDice().next();
    }

    private int starter() {
        Dice dice = turnDice();
        dice.opening();
        return dice.below(2);
    }

    /** Throws the dice. */
    synchronized void throwDice() {
        Stand stand = open.stand();
        if (!stand.mayRoll()) {
            throw new RefusedException(stand.over() ? "the game is over" : "the double is to be answered first");
        }
        thrown(true);
    }

    /**
     * Plays the dice on the table.
     *
     * @param text the play, as people write it
     * @throws RefusedException if there are no dice, or it is no play of them; its message says why
     */
    synchronized void play(String text) {
        if (!thrown) {
            throw new RefusedException("throw the dice first");
        }
        try {
            String written = text == null ? "" : text;
            add(new Entry.Turn(
                    side(), dice(), PlayText.parse(written, open.stand().position(), dice()), ""));
        } catch (IllegalPlayException e) {
            throw new RefusedException(e.getMessage());
        }
    }

    /** Doubles, or answers a double. */
    synchronized void cube(CubeAction action) {
        if (thrown) {
            throw new RefusedException("the dice are thrown: play them");
        }
        if (action == CubeAction.ROLL) {
            throw new RefusedException("to roll, throw the dice");
        }
        add(new Entry.Cube(open.stand().decides(), action, ""));
    }

    /** Gives the game up for the side that has to act. */
    synchronized void resign(GameResult result) {
        add(new Entry.Resignation(open.stand().decides(), result, ""));
    }

    private void add(Entry entry) {
        become(allowed(() -> open.with(entry)));
    }

    private static OpenRecord allowed(Supplier<OpenRecord> next) {
        try {
            return next.get();
        } catch (IllegalEntryException e) {
            throw new RefusedException(e.getMessage());
        }
    }

    /** Begins the next game. */
    synchronized void nextGame() {
        become(allowed(open::withGame));
    }

    /** Takes back the dice, else the last turn, and with it those of nets, until a person decides again. */
    synchronized void back() {
        if (thrown && open.stand().begun() && seats.get(side()).net().isEmpty()) {
            thrown(false);
            return;
        }
        OpenRecord before = open.back();
        while (seats.stream().anyMatch(seat -> seat.net().isEmpty())
                && before.stand().begun()
                && seats.get(before.stand().decides()).net().isPresent()) {
            before = before.back();
        }
        become(before);
    }

    /** On disk first: what is shown has been kept. */
    private void become(OpenRecord next) {
        try {
            keeper.keep(next.record());
        } catch (IOException e) {
            throw new RefusedException("the record could not be kept, so nothing was played: " + Reason.of(e));
        }
        open = next;
        thrown(false);
    }

    /** Another decision is at hand: what was thought about the last one is of no use. */
    private void thrown(boolean now) {
        thrown = now;
        if (thought != null) {
            thought.drop();
        }
        if (opinion != null) {
            opinion.drop();
        }
        thought = null;
        opinion = null;
    }

    /**
     * Lets a net do one thing: answer a double, double, or throw the dice and play them. It thinks as long as somebody
     * comes back to this.
     *
     * @return whether it has; if not, it still thinks
     * @throws RefusedException if no net has to act
     */
    boolean step() {
        Thought<Verdict> now = thinking();
        Optional<Verdict> verdict = now.within(WAIT);
        if (verdict.isEmpty()) {
            forget(now);
            return false;
        }
        return acts(now, verdict.get()) || step();
    }

    /** What the net that has to act thinks about; it throws the dice first where there is nothing to say before. */
    private synchronized Thought<Verdict> thinking() {
        if (!netToAct()) {
            throw new RefusedException("no net has to act here");
        }
        Stand stand = open.stand();
        if (!thrown && !stand.offered() && !stand.mayDouble()) {
            thrown(true);
        }
        thought = thought == null ? seats.get(side()).net().orElseThrow().think(question()) : thought;
        return thought;
    }

    private synchronized void forget(Thought<Verdict> one) {
        if (thought == one && one.gone()) {
            thought = null;
        }
    }

    /** Does what a net has decided, unless the game has gone another way; whether it has acted then. */
    private synchronized boolean acts(Thought<Verdict> of, Verdict verdict) {
        if (thought != of) {
            return true;
        }
        if (thrown) {
            add(new Entry.Turn(side(), dice(), verdict.best().play(), ""));
        } else if (open.stand().offered()) {
            add(new Entry.Cube(open.stand().decides(), verdict.cube().answer(), ""));
        } else if (verdict.cube().shouldDouble()) {
            add(new Entry.Cube(open.stand().decides(), CubeAction.DOUBLE, ""));
        } else {
            thrown(true);
            return false;
        }
        return true;
    }

    /** Whether there is something to ask about. */
    synchronized boolean decision() {
        return thrown || open.stand().begun() && !open.stand().over();
    }

    /**
     * What a judge says of the decision at hand. It thinks as long as somebody comes back to this.
     *
     * @param judge whom to ask
     * @return the verdict; empty if it still thinks, or there is nothing to decide
     */
    Optional<Verdict> opinion(SharedJudge judge) {
        Thought<Verdict> now;
        synchronized (this) {
            if (!decision()) {
                return Optional.empty();
            }
            opinion = opinion == null || opinion.gone() ? judge.think(question()) : opinion;
            now = opinion;
        }
        return now.within(WAIT);
    }

    /** What has to be decided now, as a question. */
    synchronized Question question() {
        Stand stand = open.stand();
        Question question = thrown ? Question.of(stand.position(), dice()) : Question.before(stand.position());
        return question.with(starterStakes(stand), stand.cube());
    }

    private Stakes starterStakes(Stand stand) {
        return stand.begun() || side() == 0 ? stand.stakes() : stand.stakes().swapped();
    }
}
