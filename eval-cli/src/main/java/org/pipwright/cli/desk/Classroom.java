package org.pipwright.cli.desk;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.pipwright.engine.judge.Question;

/** What the teacher shows to the class just now, and what the class's own devices guess. */
final class Classroom {
    private static final int MAX = 4 * Guests.MAX;

    private final Map<String, String> guesses = new HashMap<>();
    private Shown shown = new Shown(0, Optional.empty(), Optional.empty());

    /**
     * What is shown.
     *
     * @param version another number whenever something else is shown
     * @param question what is asked; empty if nothing
     * @param view the teacher's view; empty before anything was shown
     */
    record Shown(int version, Optional<Question> question, Optional<ClassView> view) {
        /** Whether guesses are taken. */
        boolean open() {
            return view.isPresent() && !view.get().shown();
        }
    }

    /**
     * Shows something else, or the answer. Guesses of another question are forgotten.
     *
     * @param question what is asked; empty if nothing
     * @param view makes the view, given how many have guessed what; quick
     * @return the view
     */
    synchronized ClassView show(Optional<Question> question, Function<Map<String, Integer>, ClassView> view) {
        if (!question.equals(shown.question)) {
            guesses.clear();
        }
        ClassView made = view.apply(guesses());
        if (shown.view.filter(before -> same(before, made)).isEmpty()) {
            shown = new Shown(shown.version + 1, question, Optional.of(made));
        }
        return made;
    }

    /** Whether guests see the same. */
    private static boolean same(ClassView before, ClassView now) {
        return before.shown() == now.shown()
                && before.svg().equals(now.svg())
                && before.question().equals(now.question())
                && before.answer().equals(now.answer());
    }

    /** What is shown now. */
    synchronized Shown shown() {
        return shown;
    }

    /**
     * A guess; another one of the same guest takes its place.
     *
     * @param guest the guest's key
     * @param text the guess as it was typed
     * @param version what the guest has seen
     * @throws RefusedException if none is asked for, or it is no guess; its message says why
     */
    synchronized void guess(String guest, String text, int version) {
        if (!shown.open() || shown.question.isEmpty()) {
            throw new RefusedException("nothing is to be guessed now");
        }
        if (version != shown.version) {
            throw new RefusedException("another position is shown by now");
        }
        String guess = Guesses.read(text, shown.question.get());
        if (guesses.size() >= MAX && !guesses.containsKey(guest)) {
            throw new RefusedException("there are enough guesses already");
        }
        guesses.put(guest, guess);
    }

    /** Forgets what was guessed; those who guessed have to come in again. */
    synchronized void forget() {
        guesses.clear();
    }

    /** What a guest has guessed. */
    synchronized Optional<String> guess(String guest) {
        return Optional.ofNullable(guesses.get(guest));
    }

    /** How many have guessed what. */
    synchronized Map<String, Integer> guesses() {
        Map<String, Integer> counts = new TreeMap<>();
        guesses.values().forEach(guess -> counts.merge(guess, 1, Integer::sum));
        return counts;
    }
}
