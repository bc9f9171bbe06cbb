package org.pipwright.cli.report;

import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.score.MatchScore;

/** Cube, stakes and verdict in plain words. */
public final class CubeWords {
    /** Where points are played for money. */
    public static final String CAUTION =
            "If points are played for money, it can be lost, and whether that is allowed is a matter of local law.";

    private CubeWords() {}

    static String cube(CubeState cube) {
        switch (cube.owner()) {
            case ME:
                return "cube at " + cube.value() + ", owned by the side on roll";
            case THEM:
                return "cube at " + cube.value() + ", owned by the opponent";
            default:
                return "cube at " + cube.value() + " in the centre";
        }
    }

    static String stakes(Stakes stakes) {
        if (stakes instanceof MoneyStakes) {
            return money((MoneyStakes) stakes);
        }
        MatchScore score = ((MatchStakes) stakes).score();
        String game = score.crawford() ? ", Crawford game" : score.postCrawford() ? ", after the Crawford game" : "";
        return "match, " + score.mine() + "-away against " + score.theirs() + "-away" + game;
    }

    static String money(MoneyStakes money) {
        return "money play" + (money.jacoby() ? ", Jacoby rule" : ", no Jacoby rule")
                + (money.beavers() ? ", beavers" : "");
    }

    static String action(CubeAction action) {
        switch (action) {
            case ROLL:
                return "roll";
            case DOUBLE:
                return "double";
            case TAKE:
                return "take";
            case PASS:
                return "pass";
            default:
                return "beaver";
        }
    }

    /** The verdict in a sentence or two. */
    static String verdict(CubeReport report) {
        return verdict(report.values(), report.cube(), report.stakes());
    }

    /**
     * The verdict on a cube in a sentence or two.
     *
     * @param values what the actions are worth
     * @param cube the cube, seen from the side on roll
     * @param stakes money or a match, seen from the side on roll
     * @return what to do, and what the opponent should
     */
    public static String verdict(CubeValues values, CubeState cube, Stakes stakes) {
        if (!values.mayDouble()) {
            return mayNot(cube, stakes);
        }
        String again = cube.owner() == CubeOwner.CENTRE ? "double" : "redouble";
        String they = "the opponent should " + action(values.answer());
        if (stakes instanceof MatchStakes && ((MatchStakes) stakes).winsAnyway(cube)) {
            return "No " + again + ": it gains nothing, since the side on roll wins the match with this game as it is."
                    + " If doubled, " + they + ".";
        }
        if (values.tooGood()) {
            return "Too good to " + again + ": play on for more than the pass would give. If doubled, " + they + ".";
        }
        if (values.optional()) {
            return "Rolling and doubling are equally good; if doubled, " + they + ".";
        }
        return values.shouldDouble()
                ? "Double: " + they + "."
                : "No " + again + " yet: roll. If doubled, " + they + ".";
    }

    private static String mayNot(CubeState cube, Stakes stakes) {
        boolean crawford =
                stakes instanceof MatchStakes && ((MatchStakes) stakes).score().crawford();
        if (crawford) {
            return "Nothing to decide: there is no doubling in the Crawford game.";
        }
        return cube.owner() == CubeOwner.THEM
                ? "Nothing to decide: only the opponent may double."
                : "Nothing to decide: the cube cannot go higher.";
    }

    /** A word more where the cube is of no use to one side. */
    static String note(CubeReport report) {
        if (!(report.stakes() instanceof MatchStakes)) {
            return "";
        }
        MatchStakes match = (MatchStakes) report.stakes();
        if (match.dead(report.cube())) {
            String owner = report.cube().owner() == CubeOwner.ME ? "the side on roll" : "the opponent";
            return "The cube is dead: " + owner + " wins the match with this game at its present value.";
        }
        if (match.score().postCrawford()
                && match.score().theirs() == 1
                && report.values().shouldDouble()) {
            return "After the Crawford game the side that is behind loses the match with any game, so it risks nothing by"
                    + " doubling.";
        }
        return "";
    }
}
