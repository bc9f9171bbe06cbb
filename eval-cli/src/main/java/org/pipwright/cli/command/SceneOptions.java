package org.pipwright.cli.command;

import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.picture.Scene;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.text.Excerpt;
import picocli.CommandLine.Option;

/** What a picture shows besides the position. */
final class SceneOptions {
    @Option(
            names = "--roll",
            paramLabel = "ROLL",
            converter = RollConverter.class,
            description = "The dice, as in 3-1 or 31.")
    private Roll roll;

    @Option(
            names = "--play",
            paramLabel = "PLAY",
            description = "A play of the roll to show as arrows, as in \"8/5 6/5\".")
    private String play;

    @Option(names = "--after", description = "Show the position after the play too, beside the one before it.")
    private boolean after;

    @Option(names = "--cube", paramLabel = "N", description = "What the cube shows: 1, 2, 4, ...")
    private Integer cube;

    @Option(
            names = "--owner",
            paramLabel = "me|them|centre",
            description = "Who owns it: the side on roll, the opponent, or nobody.")
    private String owner;

    @Option(
            names = "--away",
            paramLabel = "MINE,THEIRS",
            description = "The points that the side on roll and the opponent need to win the match, as in 3,5.")
    private String away;

    @Option(names = "--crawford", description = "The Crawford game of a match: no cube.")
    private boolean crawford;

    @Option(
            names = "--mark",
            paramLabel = "POINT",
            split = ",",
            description = "Points to highlight, numbered from the side on roll, as in 5,20.")
    private List<String> marks = List.of();

    boolean after() {
        return after;
    }

    Scene scene(Position position) {
        check(position);
        Scene scene = Scene.of(position).marked(points());
        if (away != null) {
            scene = scene.with(CubeOptions.score(away, crawford));
        }
        if (!crawford && (cube != null || owner != null || away != null)) {
            scene = scene.with(CubeOptions.cube(cube, owner, away != null, false));
        }
        return roll == null ? scene : scene.with(roll, play == null ? null : PlayText.parse(play, position, roll));
    }

    private void check(Position position) {
        if (play != null && roll == null) {
            throw new UserError("--play needs the roll: add --roll, as in --roll 3-1");
        }
        if (after && play == null) {
            throw new UserError("--after shows what a play leads to: name it with --play");
        }
        if (roll != null && position.finished()) {
            throw new UserError("the game is over in this position: leave --roll out");
        }
        if (crawford && away == null) {
            throw new UserError("--crawford is for matches: give the score with --away");
        }
        if (crawford && (cube != null || owner != null)) {
            throw new UserError("there is no cube in the Crawford game: leave --cube and --owner out");
        }
    }

    private SortedSet<Integer> points() {
        SortedSet<Integer> points = new TreeSet<>();
        for (String mark : marks) {
            String word = mark.strip();
            if (!word.matches("\\d{1,2}") || Integer.parseInt(word) < 1 || Integer.parseInt(word) > 24) {
                throw new UserError(
                        "--mark: '" + Excerpt.of(word) + "' is not a point: use 1 to 24, with commas between them");
            }
            points.add(Integer.parseInt(word));
        }
        return points;
    }
}
