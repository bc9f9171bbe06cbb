package org.pipwright.engine.drill;

import java.util.Optional;
import java.util.function.Function;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.score.MatchScore;

/** Finds questions about the cube. */
final class CubeExaminer implements Examiner {
    /** The cube has been turned in one game of three. */
    private static final int TURNED = 3;

    private static final int SHORTEST = 2;
    private static final int LONGEST = 7;

    /** Nobody asks about a double that gives away more than this, in points: the answer is plain. */
    private static final double DOUBTFUL = 0.4;

    /** Nobody is asked to answer a double that gives away more than this, in points. */
    private static final double SENSIBLE = 0.1;

    private final DrillSettings settings;
    private final Judge judge;
    private final Progress progress;
    private final Function<Stakes, CubeTerms> terms;
    private final CubeOpinion weaker;

    /** A position with what is played for, and who is asked. */
    private record Case(Position position, CubeState cube, Stakes stakes, CubeTerms terms, boolean answering) {
        CubeValues by(CubeOpinion opinion) {
            return opinion.values(position, cube, terms);
        }
    }

    CubeExaminer(
            DrillSettings settings,
            Judge judge,
            Progress progress,
            Function<Stakes, CubeTerms> terms,
            CubeOpinion weaker) {
        this.settings = settings;
        this.judge = judge;
        this.progress = progress;
        this.terms = terms;
        this.weaker = weaker;
    }

    @Override
    public Optional<Found> question(Moment moment, long game, Dice choices, Promises promises) {
        CubeState cube = choices.below(TURNED) == 0 ? new CubeState(2, CubeOwner.ME) : CubeState.START;
        Stakes stakes = settings.theme() == Theme.MATCH_SCORES ? match(choices) : MoneyStakes.USUAL;
        boolean answering = settings.theme() == Theme.TAKES_AND_PASSES
                || settings.theme() == Theme.MATCH_SCORES && choices.below(2) == 0;
        // Else nearly all answers of a sheet might be the same, which would be easy to guess.
        CubeAction wanted = CubeExercise.choices(answering).get(choices.below(2));
        Case asked = new Case(moment.position(), cube, stakes, terms.apply(stakes), answering);
        return examined(game, asked, Effort.STATIC.withRaces(false), Clarity.FIRST_LOOK)
                .filter(question -> question.best() == wanted)
                .flatMap(promising -> examined(game, asked, settings.clarity().effort(), 1))
                .filter(question -> question.best() == wanted)
                .filter(question -> promises.add(Kind.of(question)))
                .map(question -> new Found(question, promises.kinds()));
    }

    /** Scores before the Crawford game, from {@value #SHORTEST} to {@value #LONGEST} points away. */
    private static MatchStakes match(Dice choices) {
        int mine = SHORTEST + choices.below(LONGEST - SHORTEST + 1);
        int theirs = SHORTEST + choices.below(LONGEST - SHORTEST + 1);
        return new MatchStakes(new MatchScore(mine, theirs, false));
    }

    private Optional<CubeExercise> examined(long game, Case asked, Effort effort, double share) {
        Verdict verdict = verdict(asked, asked.stakes, effort);
        CubeValues values = verdict.cube();
        CubeAction theirs = CubeExercise.right(asked.by(weaker), asked.answering);
        CubeExercise question = new CubeExercise(
                new Origin.OwnGame(game),
                asked.position,
                asked.cube,
                asked.stakes,
                values,
                asked.terms.point(asked.cube),
                asked.answering,
                theirs);
        boolean hard = settings.clarity().met(question, share);
        boolean sensible = -values.cost(CubeAction.DOUBLE) <= (asked.answering ? SENSIBLE : DOUBTFUL) * question.unit();
        boolean lesson = Lesson.in(question, settings.theme(), verdict.outcomes(), settings.clarity());
        return hard && sensible && lesson && scoreMatters(asked, effort, question)
                ? Optional.of(question)
                : Optional.empty();
    }

    private boolean scoreMatters(Case asked, Effort effort, CubeExercise question) {
        if (settings.theme() != Theme.MATCH_SCORES) {
            return true;
        }
        CubeValues there = verdict(asked, MoneyStakes.USUAL, effort).cube();
        return CubeExercise.right(there, question.answering()) != question.best();
    }

    private Verdict verdict(Case asked, Stakes stakes, Effort effort) {
        Question question = Question.before(asked.position).with(stakes, asked.cube);
        return judge.ask(question, effort, progress);
    }
}
