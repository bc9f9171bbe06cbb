package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeWindow;
import org.pipwright.engine.cube.CubeWindows;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.explain.BoardFacts;
import org.pipwright.engine.explain.Exposure;
import org.pipwright.engine.explain.Prime;
import org.pipwright.engine.position.Position;

/** What decides about a double, in short sentences to the side that is asked. */
final class CubeFacts {
    private final CubeExercise question;
    private final boolean answering;
    private final List<String> said = new ArrayList<>();

    private CubeFacts(CubeExercise question) {
        this.question = question;
        this.answering = question.answering();
    }

    /** Chances and terms are those of the side on roll. */
    static List<String> sentences(CubeExercise question, Outcomes chances, CubeTerms terms) {
        CubeFacts facts = new CubeFacts(question);
        facts.chances(answeringSide(question, chances));
        facts.takePoint(chances, terms);
        facts.board();
        return facts.said;
    }

    private static Outcomes answeringSide(CubeExercise question, Outcomes chances) {
        return question.answering() ? chances.swapped() : chances;
    }

    private void chances(Outcomes mine) {
        double won = mine.winGammon() + mine.winBackgammon();
        double lost = mine.loseGammon() + mine.loseBackgammon();
        String wins = "You win " + Numbers.percent(mine.win()) + " % of the games";
        said.add(
                PlayWords.gammonsHappen(won + lost)
                        ? wins + ", " + Numbers.percent(won) + " % with a gammon or more, and lose "
                                + Numbers.percent(lost) + " % that way."
                        : wins + "; gammons hardly happen.");
    }

    private void takePoint(Outcomes chances, CubeTerms terms) {
        CubeWindows.of(terms, question.position(), GammonShares.of(chances), question.cube())
                .ifPresent(window -> said.add(takePoint(window, chances, terms)));
    }

    private String takePoint(CubeWindow window, Outcomes chances, CubeTerms terms) {
        boolean exact = terms.exact(question.position(), question.cube()).isPresent();
        String by = exact ? "On the last rolls " : "By the cube model ";
        String needed = Numbers.percent(window.takePoint()) + " %";
        return answering
                ? by + "you need " + needed + " to take."
                : by + "your opponent needs " + needed + " to take, and has " + Numbers.percent(1 - chances.win())
                        + " %.";
    }

    private void board() {
        Position doubler = question.position();
        BoardFacts board = BoardFacts.of(answering ? doubler.swapped() : doubler);
        int lead = board.lead();
        said.add("The race is " + board.pips() + " to " + board.theirPips() + ": "
                + (lead == 0 ? "even" : "you are " + Phrases.count(Math.abs(lead), "pip"))
                + (lead == 0 ? "." : lead > 0 ? " ahead." : " behind."));
        if (!board.contact()) {
            return;
        }
        bar("You have ", board.mine().onBar());
        bar("Your opponent has ", board.theirs().onBar());
        row("You have", board.prime());
        row("Your opponent has", board.theirPrime());
        // Those of the side that is not on roll: the doubler's roll comes next.
        Exposure exposure = Exposure.of(doubler);
        if (exposure.shots() > 0) {
            said.add((answering ? "Your opponent hits with " : "You hit with ") + exposure.shots()
                    + " of 36 rolls and can take " + Numbers.tenths(exposure.risk()) + " pips on average.");
        }
    }

    private void bar(String who, int onBar) {
        if (onBar > 0) {
            said.add(who + Phrases.count(onBar, "checker") + " on the bar.");
        }
    }

    private void row(String who, Prime prime) {
        if (prime.length() >= PlayWords.PRIME) {
            said.add(who + " a prime of " + prime.length() + " points with " + Phrases.count(prime.trapped(), "checker")
                    + " behind it.");
        }
    }
}
