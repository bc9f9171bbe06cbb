package org.pipwright.engine.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.pipwright.engine.bearoff.RaceOutlook;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.search.Choice;
import org.pipwright.engine.search.CubeValued;
import org.pipwright.engine.search.ParallelLookahead;
import org.pipwright.engine.search.Searched;

/** Answers questions: the plays of a roll compared, or what a position is worth before one; with and without a cube. */
final class Answers {
    private final Thinking thinking;
    private final Function<Stakes, CubeTerms> terms;

    Answers(Thinking thinking) {
        this.thinking = thinking;
        terms = thinking.knowledge().terms();
    }

    /** How this thread judges under given stakes with a cube. */
    CubeTerms terms(Stakes stakes) {
        return terms.apply(stakes);
    }

    Verdict answer(Question question, Effort effort) {
        if (question.roll() != null) {
            return plays(question, effort);
        }
        return question.cubeful() ? cube(question, effort) : odds(question, effort);
    }

    private Verdict plays(Question question, Effort effort) {
        double point = question.cubeful() ? terms(question.stakes()).point(question.cube()) : 1;
        List<PlayVerdict> plays = PlayVerdict.inOrder(searched(question, effort), point);
        if (effort.simulateRaces()) {
            plays = thinking.races()
                    .refined(plays, (play, outcomes) -> after(question, play, outcomes), question.cubeful());
        }
        Verdict verdict = Verdict.of(question, PlayVerdict.inOrder(plays, point), point);
        return effort.games() == 0
                ? verdict
                : Verdict.of(question, PlayVerdict.inOrder(new Games(thinking, effort).plays(verdict), point), point);
    }

    /** Without lookahead plays may differ by little: then they are valued by the model itself, not by its quick form. */
    private List<PlayVerdict> searched(Question question, Effort effort) {
        List<Play> plays = question.only().isEmpty()
                ? Plays.legal(question.position(), question.roll())
                : Plays.distinct(question.position(), question.roll(), question.only());
        List<Searched> found = search(question, effort, plays);
        boolean looked = found.stream().anyMatch(each -> each.lookahead() > 0);
        List<PlayVerdict> valued = new ArrayList<>();
        for (Searched each : found) {
            Play play = plays.get(each.result());
            Basis basis = basis(question, play.next());
            double value = looked || basis == Basis.EXACT ? each.value() : after(question, play, each.outcomes());
            valued.add(new PlayVerdict(play, value, each.outcomes(), new Depth(each.lookahead()), basis));
        }
        return valued;
    }

    private List<Searched> search(Question question, Effort effort, List<Play> plays) {
        ParallelLookahead search = thinking.lookahead();
        Choice choice = new Choice(
                question.position().toPlanes(), Plays.results(plays), plays.size(), question.stakes(), question.cube());
        if (!question.only().isEmpty()) {
            return search.searchAll(choice, effort.lookahead());
        }
        return effort.timed() ? search.search(choice, effort.time()) : search.search(choice, effort.lookahead());
    }

    /** What the value of a position after a play rests on, before anything is simulated. */
    private Basis basis(Question question, Position next) {
        if (!question.cubeful()) {
            return thinking.knowledge().basis(next);
        }
        boolean exact = next.finished()
                || terms(question.stakes())
                        .swapped()
                        .exact(next, question.cube().swapped())
                        .isPresent();
        return exact ? Basis.EXACT : Basis.ESTIMATED;
    }

    /** What a play leaves that leads to given chances of the side that plays. */
    private double after(Question question, Play play, Outcomes outcomes) {
        if (!question.cubeful()) {
            return outcomes.equity();
        }
        CubeTerms mine = terms(question.stakes());
        return mine.toOther(byModel(
                        mine.swapped(),
                        play.next(),
                        outcomes.swapped(),
                        question.cube().swapped())
                .best());
    }

    private Verdict odds(Question question, Effort effort) {
        if (question.position().finished()) {
            Outcomes ended = thinking.judgement().evaluator().evaluate(question.position());
            return verdict(question, ended, Depth.STATIC, Basis.EXACT);
        }
        if (effort.games() > 0) {
            return new Games(thinking, effort).odds(question);
        }
        if (thinking.simulates(question, effort)) {
            RaceOutlook race = thinking.race(question);
            return verdict(question, race.outcomes(), Depth.STATIC, race.basis());
        }
        int[] planes = question.position().toPlanes();
        int lookahead = effort.lookahead();
        Searched found = effort.timed()
                ? thinking.lookahead().evaluate(planes, effort.time())
                : new Searched(0, thinking.lookahead().evaluate(planes, lookahead), lookahead);
        Basis basis = thinking.knowledge().basis(question.position());
        return verdict(question, found.outcomes(), new Depth(found.lookahead()), basis);
    }

    private static Verdict verdict(Question question, Outcomes outcomes, Depth depth, Basis basis) {
        return new Verdict(question, outcomes.equity(), outcomes, depth, basis, List.of(), null, 1);
    }

    /** By the model itself, not by its quick form. */
    private static CubeValues byModel(CubeTerms terms, Position position, Outcomes outcomes, CubeState cube) {
        return terms.curves(position, GammonShares.of(outcomes), cube).at(outcomes.win());
    }

    private Verdict cube(Question question, Effort effort) {
        CubeTerms mine = terms(question.stakes());
        CubeState cube = question.cube();
        Position position = question.position();
        double point = mine.point(cube);
        if (mine.exact(position, cube).isPresent()) {
            CubeValues values = mine.exact(position, cube).orElseThrow();
            Outcomes outcomes = thinking.lookahead().evaluate(position.toPlanes(), 0);
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
        RaceOutlook race = thinking.race(question);
        CubeValues values = byModel(mine, question.position(), race.outcomes(), question.cube());
        return new Looked(values, race.outcomes(), 0, Races.basis(race, true));
    }

    /** The chances are those of a question without a cube, with the same lookahead. */
    private Looked looked(Question question, CubeTerms mine, Effort effort) {
        CubeValued found = effort.timed()
                ? thinking.lookahead().evaluate(question.position(), question.cube(), mine, effort.time())
                : thinking.lookahead().evaluate(question.position(), question.cube(), mine, effort.lookahead());
        thinking.goOn();
        Basis chances = thinking.knowledge().basis(question.position());
        // Exact chances make no exact values: those of the cube come from a model.
        Basis basis = chances == Basis.EXACT ? Basis.DISTRIBUTIONS : chances;
        return new Looked(found.values(), found.outcomes(), found.lookahead(), basis);
    }

    private static Verdict verdict(
            Question question, CubeValues values, Outcomes outcomes, Depth depth, Basis basis, double point) {
        return new Verdict(question, values.best(), outcomes, depth, basis, List.of(), values, point);
    }
}
