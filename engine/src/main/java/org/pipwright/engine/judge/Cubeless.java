package org.pipwright.engine.judge;

import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.evaluation.Basis;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.ranking.RankedPlay;
import org.pipwright.engine.search.Searched;

/** Answers without a cube: points per game. */
final class Cubeless implements Answering {
    private final Thinking thinking;

    Cubeless(Thinking thinking) {
        this.thinking = thinking;
    }

    @Override
    public Verdict plays(Question question, Effort effort) {
        List<PlayVerdict> plays =
                ranked(question, effort).stream().map(this::verdict).collect(Collectors.toList());
        if (effort.simulateRaces()) {
            plays = thinking.races().refined(plays, (play, outcomes) -> outcomes.equity());
        }
        Verdict verdict = Verdict.of(question, PlayVerdict.inOrder(plays, 1), 1);
        return effort.games() == 0
                ? verdict
                : Verdict.of(question, PlayVerdict.inOrder(new Games(thinking, effort).plays(verdict), 1), 1);
    }

    private List<RankedPlay> ranked(Question question, Effort effort) {
        if (!question.only().isEmpty()) {
            return thinking.search().rank(question.position(), question.roll(), question.only(), effort.lookahead());
        }
        return effort.timed()
                ? thinking.search().rank(question.position(), question.roll(), effort.time())
                : thinking.search().rank(question.position(), question.roll(), effort.lookahead());
    }

    private PlayVerdict verdict(RankedPlay play) {
        return new PlayVerdict(
                play.play(),
                play.equity(),
                play.outcomes(),
                play.depth(),
                thinking.knowledge().basis(play.play().next()));
    }

    @Override
    public Verdict before(Question question, Effort effort) {
        if (question.position().finished()) {
            Outcomes ended = thinking.judgement().evaluator().evaluate(question.position());
            return verdict(question, ended, Depth.STATIC, Basis.EXACT);
        }
        if (effort.games() > 0) {
            return new Games(thinking, effort).odds(question);
        }
        if (thinking.simulates(question, effort)) {
            return verdict(question, thinking.race(question), Depth.STATIC, Basis.SIMULATED);
        }
        Searched found = effort.timed()
                ? thinking.search().odds(question.position(), effort.time())
                : new Searched(0, thinking.search().odds(question.position(), effort.lookahead()), effort.lookahead());
        Basis basis = thinking.knowledge().basis(question.position());
        return verdict(question, found.outcomes(), new Depth(found.lookahead()), basis);
    }

    private static Verdict verdict(Question question, Outcomes outcomes, Depth depth, Basis basis) {
        return new Verdict(question, outcomes.equity(), outcomes, depth, basis, List.of(), null, 1);
    }

    @Override
    public void close() {
        // What it asks belongs to the judge.
    }
}
