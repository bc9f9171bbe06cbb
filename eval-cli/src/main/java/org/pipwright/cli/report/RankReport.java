package org.pipwright.cli.report;

import java.util.List;
import java.util.Optional;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.ranking.Listing;

/**
 * What {@code rank} has to say, with and without a cube.
 *
 * @param verdict the judge's verdict on the plays
 * @param net the net that judged
 * @param legal how many plays are legal
 * @param shown the best of those ranked, the best first, the others by their values
 * @param explanation facts about the best of them, with the cube left out; empty if nobody asked
 */
public record RankReport(
        Verdict verdict, NetLabel net, int legal, List<PlayVerdict> shown, Optional<Explanation> explanation) {
    /**
     * A report without an explanation.
     *
     * @param verdict the judge's verdict on the plays
     * @param net the net that judged
     * @param most how many plays to show at most, at least 1
     * @return the report
     */
    public static RankReport of(Verdict verdict, NetLabel net, int most) {
        Question question = verdict.question();
        int legal = question.only().isEmpty()
                ? verdict.plays().size()
                : Plays.legal(question.position(), question.roll()).size();
        List<PlayVerdict> shown = Listing.byValue(verdict.plays(), most, PlayVerdict::value);
        return new RankReport(verdict, net, legal, shown, Optional.empty());
    }

    /**
     * The same with an explanation.
     *
     * @param why facts about the best plays shown
     * @return the report
     */
    public RankReport with(Explanation why) {
        return new RankReport(verdict, net, legal, shown, Optional.of(why));
    }

    /** What was asked. */
    Question question() {
        return verdict.question();
    }

    /** How many plays were ranked. */
    int ranked() {
        return verdict.plays().size();
    }

    /** The highest equity, with the cube left out, among those ranked. */
    double bestEquity() {
        return verdict.plays().stream().mapToDouble(PlayVerdict::equity).max().orElseThrow();
    }
}
