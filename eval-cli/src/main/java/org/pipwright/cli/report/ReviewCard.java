package org.pipwright.cli.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.pipwright.cli.picture.BoardPicture;
import org.pipwright.cli.picture.Scene;
import org.pipwright.cli.picture.SvgText;
import org.pipwright.cli.picture.Theme;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.record.Heading;
import org.pipwright.engine.review.Decision;
import org.pipwright.engine.review.Moment;
import org.pipwright.engine.review.ReviewedTurn;

/**
 * One turn as a page shows it: a line that opens to the board, the choices there were, and how they differ.
 *
 * @param id the turn's id on the page
 * @param side who is on roll, 0 or 1
 * @param open whether it cost so much that it is shown opened
 * @param number the turn's number, from 1
 * @param name who is on roll
 * @param acts what was done
 * @param luckHeading what the luck is measured in
 * @param luck the luck of the roll; empty if there was none
 * @param boards the board as it was played, and as it should have been
 * @param notes remarks of the record
 * @param tables the choices there were, about the cube and for the roll
 * @param reasons why what was done is worse
 */
public record ReviewCard(
        String id,
        int side,
        boolean open,
        int number,
        String name,
        List<Act> acts,
        String luckHeading,
        String luck,
        List<Board> boards,
        List<String> notes,
        List<ChoiceTable> tables,
        List<String> reasons) {
    /** Id of the empty board that all boards of the page share. */
    static final String BOARD = "board";

    /**
     * Something that was done.
     *
     * @param words what
     * @param grade the word of its grade, or {@code forced}; empty if it was no decision
     * @param cost what it cost, in the unit of the luck beside it; empty if next to nothing
     */
    public record Act(String words, String grade, String cost) {}

    /**
     * A board.
     *
     * @param svg the picture
     * @param caption what it shows; may be empty
     */
    public record Board(String svg, String caption) {}

    static String id(ReviewedTurn turn) {
        return id(turn.moment());
    }

    /**
     * What a turn is called on pages and in addresses.
     *
     * @param moment the turn
     * @return such as {@code g1t12}
     */
    public static String id(Moment moment) {
        return "g" + (moment.game() + 1) + "t" + (moment.turn() + 1);
    }

    /**
     * A turn that has been judged.
     *
     * @param report the review
     * @param turn the turn
     * @return what is shown of it
     */
    public static ReviewCard of(ReviewReport report, ReviewedTurn turn) {
        Moment moment = turn.moment();
        Grade worst = turn.decisions().stream()
                .filter(Decision::counted)
                .map(Decision::grade)
                .max(Grade::compareTo)
                .orElse(Grade.FINE);
        List<ChoiceTable> tables = new ArrayList<>();
        ChoiceTable.ofCube(report, turn).ifPresent(tables::add);
        ChoiceTable.ofPlays(report, turn).ifPresent(tables::add);
        return new ReviewCard(
                id(turn),
                moment.onRoll(),
                worst.compareTo(Grade.COSTLY) >= 0,
                moment.turn() + 1,
                report.heading().name(moment.onRoll()),
                acts(report, turn),
                report.luckHeading(),
                turn.finding().luck().isPresent() ? report.total(turn.luckTotal()) : "",
                boards(turn),
                moment.notes(),
                tables,
                reasons(report, turn));
    }

    /**
     * A turn that waits to be judged.
     *
     * @param heading the heading of its record
     * @param moment the turn
     * @return what is shown of it: what was done, and the board
     */
    public static ReviewCard unjudged(Heading heading, Moment moment) {
        return new ReviewCard(
                id(moment),
                moment.onRoll(),
                false,
                moment.turn() + 1,
                heading.name(moment.onRoll()),
                acts(heading, moment),
                "",
                "",
                List.of(played(moment)),
                moment.notes(),
                List.of(),
                List.of());
    }

    /**
     * What was done on a turn that waits to be judged.
     *
     * @param heading the heading of its record
     * @param moment the turn
     * @return doubling, answering, playing and giving up, without grades
     */
    public static List<Act> acts(Heading heading, Moment moment) {
        List<Act> acts = new ArrayList<>();
        if (moment.doubled()) {
            acts.add(new Act(ReviewWords.doubles(moment), "", ""));
        }
        moment.answer()
                .ifPresent(answer ->
                        acts.add(new Act(heading.name(moment.opponent()) + " " + ReviewWords.answers(answer), "", "")));
        moment.played().ifPresent(turn -> acts.add(new Act(turn.roll() + ": " + turn.play(), "", "")));
        resigned(heading, moment).ifPresent(acts::add);
        return acts;
    }

    private static Optional<Act> resigned(Heading heading, Moment moment) {
        return moment.resigned()
                .map(given -> new Act(heading.name(given.side()) + " " + ReviewText.resigns(given), "", ""));
    }

    /**
     * What was done on a turn that has been judged.
     *
     * @param report the review
     * @param turn the turn
     * @return each thing that was done, with its grade
     */
    public static List<Act> acts(ReviewReport report, ReviewedTurn turn) {
        List<Act> acts = new ArrayList<>();
        for (Decision decision : turn.decisions()) {
            if (told(turn.moment(), decision)) {
                acts.add(act(report, turn, decision));
            }
        }
        resigned(report.heading(), turn.moment()).ifPresent(acts::add);
        return acts;
    }

    /** Rolling without a double is what happens on most turns: it is told of where it cost something. */
    private static boolean told(Moment moment, Decision decision) {
        return decision.kind() == Decision.Kind.PLAY || moment.doubled() || decision.grade() != Grade.FINE;
    }

    private static Act act(ReviewReport report, ReviewedTurn turn, Decision decision) {
        String words = ReviewWords.did(turn, decision);
        if (decision.kind() == Decision.Kind.PLAY) {
            words = turn.moment().played().orElseThrow().roll() + ": " + words;
        } else if (decision.side() != turn.moment().onRoll()) {
            words = report.heading().name(decision.side()) + " " + words;
        }
        if (!decision.counted()) {
            return new Act(words, "forced", "");
        }
        return new Act(
                words, decision.grade().word(), decision.grade() == Grade.FINE ? "" : report.total(decision.total()));
    }

    private static List<Board> boards(ReviewedTurn turn) {
        boolean better = turn.decisions().stream()
                .anyMatch(decision -> decision.kind() == Decision.Kind.PLAY && decision.grade() != Grade.FINE);
        List<Board> boards = new ArrayList<>();
        boards.add(played(turn.moment()));
        if (better) {
            Play best = turn.finding().options().get(0).play();
            boards.add(board(turn.moment(), best, "better: " + best));
        }
        return boards;
    }

    private static Board played(Moment moment) {
        Play made = moment.played().map(turn -> turn.play()).orElse(null);
        return board(moment, made, made == null ? "" : "played: " + made);
    }

    private static Board board(Moment moment, Play play, String caption) {
        Scene scene = new Scene(
                moment.position(),
                play == null ? moment.cube() : moment.rolling(),
                moment.stakes() instanceof MatchStakes ? ((MatchStakes) moment.stakes()).score() : null,
                play == null ? null : moment.played().orElseThrow().roll(),
                play,
                false,
                new TreeSet<>(),
                null);
        Theme theme = moment.onRoll() == 0 ? Theme.LIGHT : Theme.LIGHT.swapped();
        return new Board(SvgText.over(BoardPicture.pieces(scene, theme), BOARD), caption);
    }

    private static List<String> reasons(ReviewReport report, ReviewedTurn turn) {
        List<String> reasons = new ArrayList<>();
        for (Decision decision : turn.decisions()) {
            Optional.of(ReviewWhy.sentences(report, turn, decision))
                    .filter(why -> !why.isEmpty())
                    .ifPresent(why -> reasons.add(what(report, turn, decision) + ": " + String.join(" ", why)));
        }
        return reasons;
    }

    private static String what(ReviewReport report, ReviewedTurn turn, Decision decision) {
        String did = ReviewWords.did(turn, decision);
        return decision.kind() == Decision.Kind.PLAY ? did : report.heading().name(decision.side()) + " " + did;
    }
}
