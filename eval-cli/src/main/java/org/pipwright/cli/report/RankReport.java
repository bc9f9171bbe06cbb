package org.pipwright.cli.report;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pipwright.engine.explain.Explanation;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.ranking.Listing;

/**
 * What {@code rank} has to say, with and without a cube.
 *
 * @param verdict the judge's verdict on the plays
 * @param net the net that judged
 * @param legal how many plays are legal
 * @param ranked how many plays were asked about
 * @param shown the best of those asked about, the best first, the others by their values
 * @param missed the best play, if only others were asked about
 * @param explanation facts about the best of them, with the cube left out; empty if nobody asked
 */
public record RankReport(
        Verdict verdict,
        NetLabel net,
        int legal,
        int ranked,
        List<PlayVerdict> shown,
        Optional<PlayVerdict> missed,
        Optional<Explanation> explanation) {
    /**
     * A report without an explanation.
     *
     * @param verdict the judge's verdict on the plays
     * @param named the plays asked about, if not all; the verdict may be about the best one besides
     * @param net the net that judged
     * @param most how many plays to show at most, at least 1
     * @return the report
     */
    public static RankReport of(Verdict verdict, List<Play> named, NetLabel net, int most) {
        Question question = verdict.question();
        int legal = question.only().isEmpty()
                ? verdict.plays().size()
                : Plays.legal(question.position(), question.roll()).size();
        List<PlayVerdict> asked = verdict.plays().stream()
                .filter(play -> named.isEmpty() || named.contains(play.play()))
                .collect(Collectors.toList());
        Optional<PlayVerdict> missed = Optional.of(verdict.best()).filter(best -> best != asked.get(0));
        List<PlayVerdict> shown = Listing.byValue(asked, most, PlayVerdict::value);
        return new RankReport(verdict, net, legal, asked.size(), shown, missed, Optional.empty());
    }

    /**
     * The same with an explanation.
     *
     * @param why facts about the best plays shown
     * @return the report
     */
    public RankReport with(Explanation why) {
        return new RankReport(verdict, net, legal, ranked, shown, missed, Optional.of(why));
    }

    /** What was asked. */
    Question question() {
        return verdict.question();
    }

    /**
     * The plays that an explanation is about.
     *
     * @return the best of all, then the others shown
     */
    public List<PlayVerdict> explained() {
        return Stream.concat(missed.stream(), shown.stream()).collect(Collectors.toList());
    }

    /** The highest equity, with the cube left out, among those ranked. */
    double bestEquity() {
        return verdict.plays().stream().mapToDouble(PlayVerdict::equity).max().orElseThrow();
    }
}
