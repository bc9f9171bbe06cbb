package org.pipwright.engine.cube;

import java.util.TreeSet;

/**
 * The rules of the cube written a second time from their text, with two named sides and nothing seen from anybody's
 * view: the slow twin of {@link CubeGame}, {@link MatchStakes} and {@link MoneyStakes}.
 */
final class NaiveCubeReferee {
    final boolean match;
    final int length;
    final boolean jacoby;
    final boolean beavers;
    final int[] score = new int[2];
    boolean crawfordPlayed;

    boolean crawfordGame;
    int cube;
    int holder;
    boolean firstRoll;
    int onRoll;
    boolean offered;
    boolean toMove;

    NaiveCubeReferee(boolean match, int length, boolean jacoby, boolean beavers) {
        this.match = match;
        this.length = length;
        this.jacoby = jacoby;
        this.beavers = beavers;
    }

    void newGame(int starter) {
        boolean oneAway = score[0] == length - 1 || score[1] == length - 1;
        crawfordGame = match && length > 1 && oneAway && !crawfordPlayed;
        crawfordPlayed |= crawfordGame;
        cube = 1;
        holder = -1;
        onRoll = starter;
        offered = false;
        toMove = true;
    }

    TreeSet<String> allowed() {
        TreeSet<String> names = new TreeSet<>();
        if (offered) {
            names.add("TAKE");
            names.add("PASS");
            if (!match && beavers && cube * 4 <= 1 << 20) {
                names.add("BEAVER");
            }
        } else if (!toMove) {
            names.add("ROLL");
            if (!crawfordGame && holder != 1 - onRoll && cube * 2 <= 1 << 20) {
                names.add("DOUBLE");
            }
        }
        return names;
    }

    /** Points for the side on roll if the action ends the game, else 0. */
    int act(String action) {
        switch (action) {
            case "ROLL":
                toMove = true;
                return 0;
            case "DOUBLE":
                offered = true;
                return 0;
            case "PASS":
                return cube;
            default:
                cube *= "BEAVER".equals(action) ? 4 : 2;
                holder = 1 - onRoll;
                offered = false;
                toMove = true;
                return 0;
        }
    }

    int worth(int multiple) {
        boolean gammonsOff = !match && jacoby && holder == -1;
        return gammonsOff ? cube : cube * multiple;
    }

    void played() {
        onRoll = 1 - onRoll;
        toMove = false;
    }

    boolean matchOver() {
        return match && (score[0] >= length || score[1] >= length);
    }
}
