package org.pipwright.engine.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.CubefulPlay;
import org.pipwright.engine.cubeplay.CubefulRanker;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.search.CubeValued;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.ParallelLookahead;

/** Answers with a cube: points per unit of it, or chances to win the match. */
final class Cubeful implements Answering {
    private final Thinking thinking;
    private final Function<Stakes, CubeTerms> terms;
    private final ParallelLookahead search;

    Cubeful(Thinking thinking) {
        this.thinking = thinking;
        terms = thinking.knowledge().terms();
        search = new ParallelLookahead(
                thinking::judgement,
                thinking.knowledge()::terms,
                LookaheadSettings.DEFAULT,
                thinking.threads(),
                ParallelLookahead.memory(),
                thinking::stopped);
    }

    CubeTerms terms(Stakes stakes) {
        return terms.apply(stakes);
    }

    @Override
    public Verdict plays(Question question, Effort effort) {
        CubeTerms mine = terms.apply(question.stakes());
        CubeState cube = question.cube();
        double point = mine.point(cube);
        List<PlayVerdict> plays = new ArrayList<>();
        for (CubefulPlay each : ranked(question, effort)) {
            Basis basis = each.exact() ? Basis.EXACT : Basis.ESTIMATED;
            plays.add(new PlayVerdict(each.play(), each.value(), each.outcomes(), each.depth(), basis));
        }
        if (effort.simulateRaces()) {
            plays = thinking.races().refined(plays, (play, outcomes) -> after(mine, play, outcomes, cube));
        }
        Verdict verdict = Verdict.of(question, PlayVerdict.inOrder(plays, point), point);
        return effort.games() == 0
                ? verdict
                : Verdict.of(question, PlayVerdict.inOrder(new Games(thinking, effort).plays(verdict), point), point);
    }

    private List<CubefulPlay> ranked(Question question, Effort effort) {
        CubefulRanker ranker = new CubefulRanker(search, terms.apply(question.stakes()));
        Position position = question.position();
        if (!question.only().isEmpty()) {
            return ranker.rank(position, question.roll(), question.only(), question.cube(), effort.lookahead());
        }
        return effort.timed()
                ? ranker.rank(position, question.roll(), question.cube(), effort.time())
                : ranker.rank(position, question.roll(), question.cube(), effort.lookahead());
    }

    /** What a play leaves that leads to given chances of the side that plays. */
    private static double after(CubeTerms terms, Play play, Outcomes outcomes, CubeState cube) {
        return terms.toOther(byModel(terms.swapped(), play.next(), outcomes.swapped(), cube.swapped())
                .best());
    }

    /** By the model itself, not by its quick form. */
    private static CubeValues byModel(CubeTerms terms, Position position, Outcomes outcomes, CubeState cube) {
        return terms.curves(position, GammonShares.of(outcomes), cube).at(outcomes.win());
    }

    @Override
    public Verdict before(Question question, Effort effort) {
        CubeTerms mine = terms.apply(question.stakes());
        CubeState cube = question.cube();
        Position position = question.position();
        double point = mine.point(cube);
        if (mine.exact(position, cube).isPresent()) {
            CubeValues values = mine.exact(position, cube).orElseThrow();
            Outcomes outcomes = thinking.search().odds(position, 0);
            return verdict(question, values, outcomes, Depth.STATIC, Basis.EXACT, point);
        }
        Looked looked = thinking.simulates(question, effort) ? race(question, mine) : looked(question, mine, effort);
        if (effort.games() > 0) {
            Games.Actions played = new Games(thinking, effort).actions(question);
            return verdict(question, played.values(), looked.outcomes, played.depth(), Basis.ESTIMATED, point);
        }
        return verdict(question, looked.values, looked.outcomes, new Depth(looked.lookahead), looked.basis, point);
    }

    /** What is known before games. */
    private record Looked(CubeValues values, Outcomes outcomes, int lookahead, Basis basis) {}

    private Looked race(Question question, CubeTerms mine) {
        Outcomes outcomes = thinking.race(question);
        CubeValues values = byModel(mine, question.position(), outcomes, question.cube());
        return new Looked(values, outcomes, 0, Basis.SIMULATED);
    }

    /** The chances are those of a question without a cube, with the same lookahead. */
    private Looked looked(Question question, CubeTerms mine, Effort effort) {
        CubeValued found = effort.timed()
                ? search.evaluate(question.position(), question.cube(), mine, effort.time())
                : search.evaluate(question.position(), question.cube(), mine, effort.lookahead());
        thinking.goOn();
        return new Looked(found.values(), found.outcomes(), found.lookahead(), Basis.ESTIMATED);
    }

    private static Verdict verdict(
            Question question, CubeValues values, Outcomes outcomes, Depth depth, Basis basis, double point) {
        return new Verdict(question, values.best(), outcomes, depth, basis, List.of(), values, point);
    }

    @Override
    public void close() {
        search.close();
    }
}
