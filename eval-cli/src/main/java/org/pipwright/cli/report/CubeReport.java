package org.pipwright.cli.report;

import java.util.List;
import java.util.Optional;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubeWindow;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.cube.Market;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.CubeOutlook;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.position.Position;

/**
 * What {@code cube} has to say.
 *
 * @param position the position before the roll
 * @param cube the cube, seen from the side on roll
 * @param stakes what is played for, seen from the side on roll
 * @param net the net that judged
 * @param lookahead future rolls averaged over
 * @param basis what the values rest on
 * @param outcomes the six chances of the side on roll
 * @param values values of the cube actions to the side on roll: points per unit of the cube, or chances to win the match
 * @param window take point and doubling window at the position's share of gammons; empty where the model's would
 *     contradict exact values, and where a double gains nothing
 * @param gammons both sides' gammon values at the present cube; empty if a single game decides nothing
 * @param market what the next two rolls do; empty if the side on roll may not double
 * @param why why the right actions are right, in sentences; empty if nobody asked
 */
public record CubeReport(
        Position position,
        CubeState cube,
        Stakes stakes,
        NetLabel net,
        int lookahead,
        Basis basis,
        Outcomes outcomes,
        CubeValues values,
        Optional<CubeWindow> window,
        Optional<GammonValues> gammons,
        Optional<Market> market,
        List<String> why) {
    /**
     * Keeps the sentences.
     *
     * @param position the position before the roll
     * @param cube the cube
     * @param stakes what is played for
     * @param net the net that judged
     * @param lookahead future rolls averaged over
     * @param basis what the values rest on
     * @param outcomes the six chances
     * @param values values of the cube actions
     * @param window take point and doubling window
     * @param gammons gammon values at the present cube
     * @param market what the next two rolls do
     * @param why sentences
     */
    public CubeReport {
        why = List.copyOf(why);
    }

    /**
     * The report of a verdict on a cube.
     *
     * @param verdict what the judge said
     * @param outlook what surrounds it
     * @param net the net that judged
     * @return the report
     */
    public static CubeReport of(Verdict verdict, CubeOutlook outlook, NetLabel net) {
        return new CubeReport(
                verdict.question().position(),
                verdict.question().cube(),
                verdict.question().stakes(),
                net,
                verdict.depth().lookahead(),
                verdict.basis(),
                verdict.outcomes(),
                verdict.cube(),
                outlook.window(),
                outlook.gammons(),
                outlook.market(),
                List.of());
    }

    /**
     * The same with the reasons.
     *
     * @param terms how the cube is judged under these stakes, seen from the side on roll
     * @return the report
     */
    public CubeReport explained(CubeTerms terms) {
        CubeCase asked = new CubeCase(position, cube, stakes, values, outcomes, basis, terms, market);
        return new CubeReport(
                position,
                cube,
                stakes,
                net,
                lookahead,
                basis,
                outcomes,
                values,
                window,
                gammons,
                market,
                CubeReasons.sentences(asked, Voice.REPORT));
    }

    /** Whether a match is played, so that values are chances to win it. */
    boolean match() {
        return stakes instanceof MatchStakes;
    }
}
