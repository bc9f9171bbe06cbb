package org.pipwright.cli.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.Market;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.Heading;
import org.pipwright.engine.review.Review;
import org.pipwright.engine.review.ReviewSettings;
import org.pipwright.engine.review.ReviewedTurn;
import org.pipwright.engine.review.TurningPoint;

/**
 * What {@code review} has to say.
 *
 * @param review the record, judged
 * @param net the net that judged
 * @param terms what gammons and cubes are worth under given stakes, seen from the side on roll
 * @param market what the next two rolls do to a cube that is asked about
 */
public record ReviewReport(
        Review review, NetLabel net, Function<Stakes, CubeTerms> terms, Function<Question, Optional<Market>> market) {
    private static final int TURNING_POINTS = 4;

    GameRecord record() {
        return review.record();
    }

    Heading heading() {
        return record().heading();
    }

    /** Whether a match is played, so that what counts in the end is the chance to win it. */
    boolean match() {
        return heading().rules().match();
    }

    /** How deeply it was looked at, in words. */
    String depth() {
        ReviewSettings settings = review.settings();
        return "lookahead " + settings.lookahead()
                + (settings.games() == 0
                        ? ""
                        : ", " + settings.games() + " games from each decision that seemed to cost something");
    }

    /** What a change of what counts in the end comes to, with its sign and unit. */
    String total(double change) {
        String size = match() ? Numbers.finePercent(Math.abs(change)) : Numbers.thousandths(Math.abs(change));
        boolean nothing = size.chars().allMatch(c -> c == '0' || c == '.');
        return (nothing ? "" : change < 0 ? "-" : "+") + size + (match() ? " %" : "");
    }

    /** What luck is measured in, beside chances to win the game. */
    String luckHeading() {
        return match() ? "match luck" : "luck, points";
    }

    /** The rolls and the decisions that changed most, by their heading. */
    Map<String, List<TurningPoint>> turningPoints() {
        Map<String, List<TurningPoint>> points = new LinkedHashMap<>();
        points.put("decisions", review.turningDecisions(TURNING_POINTS));
        points.put("rolls", review.turningRolls(TURNING_POINTS));
        points.values().removeIf(List::isEmpty);
        return points;
    }

    List<TurningPoint> allTurningPoints() {
        return turningPoints().values().stream().flatMap(List::stream).collect(Collectors.toList());
    }

    /** Points of each side before a game. */
    int[] scoreBefore(int game) {
        int[] won = new int[2];
        for (int i = 0; i < game; i++) {
            int points = record().games().get(i).points();
            won[points > 0 ? 0 : 1] += Math.abs(points);
        }
        return won;
    }

    /** How a game ended, such as {@code Ada wins 2 points}. */
    String ending(int game) {
        int points = record().games().get(game).points();
        return points == 0
                ? "not finished"
                : heading().name(points > 0 ? 0 : 1) + " wins " + Phrases.count(Math.abs(points), "point");
    }

    /** What the record is, in a line. */
    String title() {
        return heading().name(0) + " against " + heading().name(1) + ", "
                + ReviewWords.rules(heading().rules());
    }

    /** Chance of the first player to win the game, before a turn. */
    static double winChance(ReviewedTurn turn) {
        return turn.chances(0).win();
    }
}
