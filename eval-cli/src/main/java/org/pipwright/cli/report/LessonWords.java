package org.pipwright.cli.report;

import java.util.List;
import java.util.function.Predicate;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.drill.CubeExercise;
import org.pipwright.engine.explain.Motive;

/** What an exercise teaches beyond its own position, in one short sentence. The advice is the trade's (common practice, no source). */
final class LessonWords {
    private LessonWords() {}

    /** The lesson of a play, by what tells it from the weaker one: the first kind of fact that a sheet is about, else the first. */
    static String ofPlay(List<Motive> leads, Predicate<Motive> about) {
        return leads.isEmpty()
                ? "Nothing in sight tells these two apart: it is the chances that do, so compare them."
                : of(leads.stream().filter(about).findFirst().orElse(leads.get(0)));
    }

    private static String of(Motive motive) {
        return switch (motive) {
            case POINT -> "A good point lasts: make it when the dice offer it, the best one first.";
            case ANCHOR -> "With an anchor you can always come in, and so take chances elsewhere.";
            case HIT -> "A hit takes half of the opponent's roll, and pips besides: look for one first.";
            case SHOTS -> "Before you leave a blot, count the rolls that hit it and what each would cost.";
            case ENTRY -> "While a checker is on the bar, every closed point is a roll that plays nothing.";
            case PRIME -> "Points in a row hold checkers, and each one more makes escape much rarer.";
            case ESCAPE -> "A checker leaves before the row in front of it is complete, not after.";
            case BUILDERS -> "Spare checkers within six pips of the point you want make it next turn.";
            case TIMING -> "Who must break first loses the position: count the pips you can still play.";
            case NEXT_SHOTS -> "Against contact look one roll ahead: even stacks without gaps leave fewer shots.";
            case WAITING -> "Where the opponent must soon leave a shot, stay and wait for it.";
            case SPREAD -> "Stacked and buried checkers do no work: spread them over useful points.";
            case HOME_BLOTS -> "Before you exchange hits, mind the blots in your own home.";
            case NUMBERS -> "Let the opponent need the same numbers for two purposes, and your own good ones differ.";
            case OFF -> "Take checkers off where you can; else bring in the rearmost ones and fill the gaps.";
            case RACE -> "Where the race decides, waste no pips.";
            case SAVE -> "To save a gammon bring the last checkers home first: it takes one borne off.";
            case GAMMONS -> "At a match score, know what gammons are worth before you play for them.";
        };
    }

    /** The lesson of a decision about the cube. */
    static String ofCube(CubeExercise question) {
        if (question.values().tooGood()) {
            return question.answering()
                    ? "A double that comes too late is a gift: pass it and the gammon is gone."
                    : "Play on while gammons are worth more than the pass gives and little can go wrong.";
        }
        if (question.answering() && question.stakes() instanceof MatchStakes) {
            return "At a match score the take point is its own: ask what is left of the match after a pass and after a loss.";
        }
        if (question.answering()) {
            if (question.best() == CubeAction.PASS && question.position().opponentBorneOff() > 0) {
                return "Pass where you win less than a quarter of the games; owning the cube makes up for a little less.";
            }
            return question.best() == CubeAction.PASS
                    ? "Pass where what you lose by gammons and by winning too seldom is more than the game is worth."
                    : "Take where you win a quarter of the games, a little less for owning the cube, more where gammons"
                            + " are lost.";
        }
        if (question.stakes() instanceof MatchStakes) {
            return "At a match score ask what each point is worth, to you and to them, before you turn the cube.";
        }
        if (question.best() == CubeAction.DOUBLE && question.values().answer() == CubeAction.PASS) {
            return "Where the opponent must pass and gammons are too few to play on for, take the point.";
        }
        return question.best() == CubeAction.DOUBLE
                ? "Double while it can still be taken: when the next rolls may win the market, waiting costs."
                : "Keep the cube while few of the next rolls would make the opponent pass: it is worth more to you unturned.";
    }
}
