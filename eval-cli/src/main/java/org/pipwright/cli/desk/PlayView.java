package org.pipwright.cli.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.cli.picture.Scene;
import org.pipwright.cli.picture.SvgText;
import org.pipwright.cli.report.Numbers;
import org.pipwright.cli.report.PlayReasons;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.explain.Swing;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;

/**
 * A play that was chosen, as a page shows it.
 *
 * @param play the play
 * @param best whether it is the best
 * @param after the position after it, as an SVG element
 * @param sentences why it is good, or what it lacks
 * @param rolls the opponent's 21 rolls, those first that cost it most
 */
public record PlayView(String play, boolean best, String after, List<String> sentences, List<Bar> rolls) {
    /** Half of a bar's picture, in its units. */
    private static final int HALF = 50;

    /**
     * A roll of the opponent.
     *
     * @param roll the roll
     * @param reply its best reply
     * @param change what it costs or brings the side that has played, against the mean of all rolls, in points
     * @param from where the bar begins, 0 to 100; 50 is the mean
     * @param width how wide it is
     */
    public record Bar(String roll, String reply, String change, int from, int width) {
        /**
         * Whether the roll costs something.
         *
         * @return whether the bar lies to the left of the mean
         */
        public boolean costs() {
            return from < HALF;
        }
    }

    /** The view of the play that a setting has chosen; the replies are the net's own, without lookahead. */
    static PlayView of(Setting setting, Verdict verdict, Judge judge, Knowledge knowledge) {
        PlayVerdict chosen = verdict.plays().stream()
                .filter(play -> play.play()
                        .result()
                        .equals(setting.asking().play().orElseThrow().result()))
                .findFirst()
                .orElseThrow();
        boolean best = chosen == verdict.best();
        List<PlayVerdict> compared = best ? List.of(chosen) : List.of(verdict.best(), chosen);
        Explanation explanation = explanation(verdict.question(), compared, judge, knowledge);
        Scene scene = BoardDrawing.scene(setting, verdict.question().position());
        return new PlayView(
                chosen.play().toString(),
                best,
                SvgText.of(BoardDrawing.drawing(
                        setting,
                        scene.with(verdict.question().roll(), chosen.play()).after())),
                PlayReasons.of(explanation, best ? 0 : 1),
                bars((best ? explanation.best() : explanation.rivals().get(0))
                        .swings()
                        .rolls()));
    }

    private static Explanation explanation(
            Question question, List<PlayVerdict> compared, Judge judge, Knowledge knowledge) {
        return Explanation.of(question.position(), compared, judge, 0).under(question, knowledge.terms());
    }

    private static List<Bar> bars(List<Swing> rolls) {
        double widest = rolls.stream()
                .mapToDouble(roll -> Math.abs(roll.change()))
                .max()
                .orElse(0);
        return rolls.stream()
                .map(roll -> {
                    int width = widest == 0 ? 0 : (int) Math.round(HALF * Math.abs(roll.change()) / widest);
                    return new Bar(
                            roll.roll().toString(),
                            roll.reply().toString(),
                            Numbers.points(roll.change()),
                            roll.change() < 0 ? HALF - width : HALF,
                            width);
                })
                .collect(Collectors.toCollection(ArrayList::new));
    }
}
