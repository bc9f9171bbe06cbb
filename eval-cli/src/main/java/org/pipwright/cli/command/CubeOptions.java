package org.pipwright.cli.command;

import java.util.List;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.score.MatchScore;
import org.pipwright.engine.text.Excerpt;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What is played for, and where the cube is. */
final class CubeOptions {
    @Option(names = "--cube", paramLabel = "N", description = "What the cube shows: 1, 2, 4, ... Default: 1.")
    private Integer cube;

    @Option(
            names = "--owner",
            paramLabel = "me|them|centre",
            description = "Who owns it: the side on roll, the opponent, or nobody. Default: centre.")
    private String owner;

    @Option(
            names = "--no-jacoby",
            description = "Money play without the Jacoby rule: gammons count even if nobody has doubled.")
    private boolean noJacoby;

    @Option(names = "--beavers", description = "Money play in which a double may be beavered.")
    private boolean beavers;

    @Option(
            names = "--away",
            paramLabel = "MINE,THEIRS",
            description =
                    "Match play: the points the side on roll needs to win, and those the opponent needs, as in 3,5.")
    private String away;

    @Option(names = "--crawford", description = "The Crawford game of a match: no doubling.")
    private boolean crawford;

    @Mixin
    private MatchTableOption table;

    /** Whether anything was said of the cube or of what is played for. */
    boolean given() {
        return cube != null || owner != null || away != null || crawford || noJacoby || beavers || table.given();
    }

    /** A question with this cube and these stakes, if there are any. */
    Question about(Question question) {
        return given() ? question.with(stakes(), cube()) : question;
    }

    /** What is known, with the match table that was given; fails if that does not reach to the score. */
    Knowledge knowledge(Knowledge standard) {
        Knowledge own = table.knowledge(standard);
        if (given()) {
            try {
                own.terms(stakes());
            } catch (IllegalArgumentException e) {
                throw new UserError(e.getMessage());
            }
        }
        return own;
    }

    /** The cube, seen from the side on roll. */
    CubeState cube() {
        return cube(cube, owner, away != null, crawford);
    }

    /** A cube from what options say of it; null for what they do not. */
    static CubeState cube(Integer shown, String owner, boolean match, boolean crawford) {
        int value = shown == null ? 1 : shown;
        try {
            CubeState.requireShown(value);
        } catch (IllegalArgumentException e) {
            throw new UserError("--cube: " + e.getMessage());
        }
        CubeOwner who = owner(owner);
        if (value > 1 && owner == null) {
            throw new UserError("--cube is " + value + ": say who owns it with --owner me or --owner them");
        }
        if (match && value > 1 && who == CubeOwner.CENTRE) {
            throw new UserError("a cube at " + value + " has an owner in a match: use --owner me or --owner them");
        }
        if (crawford && value > 1) {
            throw new UserError("there is no doubling in the Crawford game: leave --cube out");
        }
        try {
            return new CubeState(value, who);
        } catch (IllegalArgumentException e) {
            throw new UserError("--cube: " + e.getMessage());
        }
    }

    private static CubeOwner owner(String owner) {
        switch (owner == null ? "centre" : owner) {
            case "me":
                return CubeOwner.ME;
            case "them":
                return CubeOwner.THEM;
            case "centre":
                return CubeOwner.CENTRE;
            default:
                throw new UserError("--owner is '" + Excerpt.of(owner) + "': use me, them or centre");
        }
    }

    /** What is played for, seen from the side on roll. */
    Stakes stakes() {
        if (away == null) {
            if (crawford || table.given()) {
                throw new UserError(
                        (crawford ? "--crawford" : "--table") + " is for matches: give the score with --away");
            }
            return new MoneyStakes(!noJacoby, beavers);
        }
        if (noJacoby || beavers) {
            throw new UserError((noJacoby ? "--no-jacoby" : "--beavers")
                    + " is for money play: matches have neither the Jacoby rule nor beavers");
        }
        return new MatchStakes(score(away, crawford));
    }

    /** A score from what options say of it. */
    static MatchScore score(String away, boolean crawford) {
        String[] parts = away.split(",", -1);
        if (parts.length != 2
                || !parts[0].strip().matches("[0-9]{1,4}")
                || !parts[1].strip().matches("[0-9]{1,4}")) {
            throw new UserError("--away is '" + Excerpt.of(away) + "': give the points both sides need, as in 3,5");
        }
        try {
            return new MatchScore(Integer.parseInt(parts[0].strip()), Integer.parseInt(parts[1].strip()), crawford);
        } catch (IllegalArgumentException e) {
            throw new UserError("--away: " + e.getMessage());
        }
    }

    /** What decides values with the cube, one thing a line. */
    List<String> identity() {
        return away == null ? List.of() : List.of("table " + table.identity());
    }
}
