package org.pipwright.bench.start;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.RollReply;

/**
 * The chances, before the first roll, of the side that makes it.
 *
 * @param lookahead number of future rolls averaged over
 * @param opening which first rolls
 * @param outcomes the six chances
 */
record StartOdds(int lookahead, Opening opening, Outcomes outcomes) {
    /** Which first rolls are averaged over. */
    enum Opening {
        /** No roll is: it is what the net says, and that is about games like those it was trained on. */
        AS_TRAINED("as the net was trained"),
        /** As the game is played: the 15 rolls that are no doubles, all as likely. */
        NO_DOUBLES("no double"),
        /** Any of the 36 throws. */
        ANY("any roll");

        private final String words;

        Opening(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    /** With lookahead 0 to 2. */
    static List<StartOdds> of(Judge judge) {
        Position start = Position.start();
        List<StartOdds> all = new ArrayList<>();
        all.add(new StartOdds(0, Opening.AS_TRAINED, odds(judge, 0)));
        for (int lookahead = 1; lookahead <= 2; lookahead++) {
            List<RollReply> replies = judge.replies(start, lookahead - 1);
            all.add(new StartOdds(lookahead, Opening.NO_DOUBLES, meanOfOpenings(replies)));
            all.add(new StartOdds(lookahead, Opening.ANY, odds(judge, lookahead)));
        }
        return all;
    }

    private static Outcomes odds(Judge judge, int lookahead) {
        return judge.ask(Question.before(Position.start()), Effort.lookahead(lookahead))
                .outcomes();
    }

    private static Outcomes meanOfOpenings(List<RollReply> replies) {
        double[] sums = new double[Outcomes.COUNT];
        for (RollReply reply : replies) {
            if (!reply.roll().isDouble()) {
                Outcomes each = reply.outcomes();
                double[] six = {
                    each.winSingle(), each.winGammon(), each.winBackgammon(),
                    each.loseSingle(), each.loseGammon(), each.loseBackgammon()
                };
                for (int k = 0; k < sums.length; k++) {
                    sums[k] += six[k] / Roll.opening().size();
                }
            }
        }
        return new Outcomes(sums[0], sums[1], sums[2], sums[3], sums[4], sums[5]);
    }
}
