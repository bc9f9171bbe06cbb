package org.pipwright.cli.desk;

import java.util.Map;
import java.util.function.UnaryOperator;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubelessStakes;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.score.MatchScore;

/**
 * What is played for, as an address and a form say it: in the words of the options of {@code cube}. Immutable.
 *
 * @param stakes what is played for, seen from the side on roll
 * @param cube the cube, seen from the side on roll
 */
record PlayedFor(Stakes stakes, CubeState cube) {
    /** Money play with the Jacoby rule and a cube in the centre. */
    static final PlayedFor USUAL = new PlayedFor(MoneyStakes.USUAL, CubeState.START);

    /** Score of a match that says nothing of it. */
    static final String USUAL_SCORE = "5,5";

    /**
     * Reads it.
     *
     * @param field gives the text of a field, or null
     * @throws IllegalArgumentException if a field cannot be used; its message says which and why
     */
    static PlayedFor parse(UnaryOperator<String> field) {
        switch (text(field, "for", "money")) {
            case "points":
                return new PlayedFor(new CubelessStakes(), CubeState.START);
            case "money":
                return new PlayedFor(
                        new MoneyStakes(field.apply("no-jacoby") == null, field.apply("beavers") != null),
                        cube(field, false, false));
            case "match":
                boolean crawford = field.apply("crawford") != null;
                return new PlayedFor(new MatchStakes(score(field, crawford)), cube(field, true, crawford));
            default:
                throw new IllegalArgumentException("play for money, a match, or points");
        }
    }

    private static String text(UnaryOperator<String> field, String name, String usual) {
        String text = field.apply(name);
        return text == null || text.isBlank() ? usual : text.strip();
    }

    private static MatchScore score(UnaryOperator<String> field, boolean crawford) {
        String away = text(field, "away", USUAL_SCORE);
        if (!away.matches("[0-9]{1,4} ?, ?[0-9]{1,4}")) {
            throw new IllegalArgumentException("away is the points both sides need to win the match, as in 3,5");
        }
        String[] parts = away.split(" ?, ?");
        return new MatchScore(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]), crawford);
    }

    private static CubeState cube(UnaryOperator<String> field, boolean match, boolean crawford) {
        String shown = text(field, "cube", "1");
        if (!shown.matches("[0-9]{1,7}")) {
            throw new IllegalArgumentException("the cube shows 1, 2, 4, ... up to " + CubeState.HIGHEST);
        }
        int value = Integer.parseInt(shown);
        CubeState.requireShown(value);
        if (crawford && value > 1) {
            throw new IllegalArgumentException("there is no doubling in the Crawford game: the cube stays at 1");
        }
        if (value == 1) {
            return CubeState.START;
        }
        return new CubeState(value, owner(text(field, "owner", "centre"), match));
    }

    private static CubeOwner owner(String owner, boolean match) {
        switch (owner) {
            case "me":
                return CubeOwner.ME;
            case "them":
                return CubeOwner.THEM;
            case "centre":
                if (match) {
                    throw new IllegalArgumentException("a turned cube has an owner in a match: you or the opponent");
                }
                return CubeOwner.CENTRE;
            default:
                throw new IllegalArgumentException("the cube is yours, the opponent's, or in the centre");
        }
    }

    /** Writes what differs from the usual. */
    void write(Map<String, String> fields) {
        if (stakes instanceof CubelessStakes) {
            fields.put("for", "points");
            return;
        }
        if (stakes instanceof MatchStakes) {
            MatchScore score = ((MatchStakes) stakes).score();
            fields.put("for", "match");
            fields.put("away", score.mine() + "," + score.theirs());
            flag(fields, "crawford", score.crawford());
        } else {
            flag(fields, "no-jacoby", !((MoneyStakes) stakes).jacoby());
            flag(fields, "beavers", ((MoneyStakes) stakes).beavers());
        }
        if (!cube.equals(CubeState.START)) {
            fields.put("cube", Integer.toString(cube.value()));
            fields.put("owner", ownerWord());
        }
    }

    private static void flag(Map<String, String> fields, String name, boolean set) {
        if (set) {
            fields.put(name, "yes");
        }
    }

    /** Whose cube it is, in a word. */
    String ownerWord() {
        switch (cube.owner()) {
            case ME:
                return "me";
            case THEM:
                return "them";
            default:
                return "centre";
        }
    }

    /** The same seen from the opponent's side. */
    PlayedFor swapped() {
        return new PlayedFor(stakes.swapped(), cube.swapped());
    }
}
