package org.pipwright.cli.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.play.IllegalPlayException;
import org.pipwright.engine.play.PlayText;

/**
 * What a class has guessed, and how many guessed it; kept in the address, as {@code 3: 8/5 6/5; 1: 24/20}. Immutable.
 *
 * @param all the guesses, in the order in which they came
 */
record Guesses(List<Guess> all) {
    private static final int MAX = 12;
    private static final int MAX_HANDS = 99;
    private static final List<String> CUBE = List.of("roll", "double, take", "double, pass");

    /**
     * A guess.
     *
     * @param what a play, or what to do about the cube
     * @param hands how many guessed it
     */
    record Guess(String what, int hands) {}

    Guesses {
        all = List.copyOf(all);
    }

    /** Reads those of a question; what is no guess there is passed over. */
    static Guesses parse(String text, Question question) {
        Guesses guesses = new Guesses(List.of());
        for (String action : actions(question)) {
            guesses = guesses.with(action, 0);
        }
        for (String part : text == null ? new String[0] : text.split(";", MAX + 1)) {
            String[] words = part.strip().split(": ", 2);
            if (words.length == 2 && words[0].matches("[0-9]{1,2}")) {
                Optional<String> what = known(words[1], question);
                guesses = what.isPresent() ? guesses.with(what.get(), Integer.parseInt(words[0])) : guesses;
            }
        }
        return guesses;
    }

    /** Whether there is something to do about the cube. */
    static boolean doubles(Question question) {
        return question.roll() == null
                && question.cubeful()
                && question.stakes().mayDouble(question.cube());
    }

    private static Optional<String> known(String what, Question question) {
        try {
            return Optional.of(read(what, question));
        } catch (RefusedException e) {
            return Optional.empty();
        }
    }

    /** What can be done about the cube; nothing where there is no such choice. */
    static List<String> actions(Question question) {
        return doubles(question) ? CUBE : List.of();
    }

    /**
     * Reads one guess.
     *
     * @throws RefusedException if it is no play of the roll, or nothing that can be done about the cube
     */
    static String read(String text, Question question) {
        if (text == null || text.isBlank()) {
            throw new RefusedException("write a guess first");
        }
        if (question.roll() != null) {
            return play(text, question);
        }
        if (!actions(question).contains(text)) {
            throw new RefusedException("choose one of the buttons");
        }
        return text;
    }

    private static String play(String text, Question question) {
        try {
            return PlayText.parse(text, question.position(), question.roll()).toString();
        } catch (IllegalPlayException e) {
            throw new RefusedException(e.getMessage());
        }
    }

    /**
     * One more play to raise hands for.
     *
     * @throws RefusedException if it is no play of the roll, or there are enough already
     */
    Guesses adding(String text, Question question) {
        String play = play(text, question);
        if (all.size() >= MAX && !knows(play)) {
            throw new RefusedException("there are " + MAX + " guesses already");
        }
        return knows(play) ? this : with(play, 1);
    }

    /** Whether hands are raised for a guess, or could be. */
    boolean knows(String what) {
        return all.stream().anyMatch(guess -> guess.what.equals(what));
    }

    /** The same with so many hands for a guess. */
    Guesses with(String what, int hands) {
        int bounded = Math.max(0, Math.min(hands, MAX_HANDS));
        List<Guess> changed = new ArrayList<>();
        boolean found = false;
        for (Guess guess : all) {
            boolean same = guess.what.equals(what);
            found |= same;
            changed.add(same ? new Guess(what, bounded) : guess);
        }
        if (!found) {
            changed.add(new Guess(what, bounded));
        }
        return new Guesses(changed);
    }

    /** What {@link #parse} reads back. */
    String text() {
        return all.stream().map(guess -> guess.hands + ": " + guess.what).collect(Collectors.joining("; "));
    }
}
