package org.pipwright.engine.drill;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;

/** Finds questions about plays. */
final class PlayExaminer implements Examiner {
    /** So many plays at least get the full lookahead. */
    private static final int DEEP = 5;

    /** A first look with less lookahead only has to come this close to what is asked for. */
    private static final double FIRST_LOOK = 0.5;

    private final DrillSettings settings;
    private final Judge judge;
    private final Progress progress;
    private final Player weaker;
    private final PlayGenerator generator = new PlayGenerator();

    PlayExaminer(DrillSettings settings, Judge judge, Progress progress, Player weaker) {
        this.settings = settings;
        this.judge = judge;
        this.progress = progress;
        this.weaker = weaker;
    }

    @Override
    public Optional<Exercise> question(Moment moment, long game, Dice choices) {
        Position position = moment.position();
        int[] planes = position.toPlanes();
        if (generator.generate(planes, 0, moment.roll().high(), moment.roll().low()) < 2) {
            return Optional.empty();
        }
        int chosen = weaker.choose(planes, 0, generator, choices);
        Position other = Position.ofPlanes(generator.results(), chosen * Planes.STRIDE);
        List<PlayVerdict> ranking = List.of();
        for (int lookahead = Math.min(1, settings.lookahead()); lookahead <= settings.lookahead(); lookahead++) {
            // Only the last look needs to know races that well.
            boolean simulated = settings.simulateRaces() && lookahead == settings.lookahead();
            Effort effort = Effort.lookahead(lookahead).withRaces(simulated);
            ranking = judge.ask(Question.of(position, moment.roll()), effort, progress)
                    .plays();
            if (!hardEnough(position, ranking, other, FIRST_LOOK)) {
                return Optional.empty();
            }
        }
        List<PlayVerdict> deep = deepened(moment, ranking, other);
        return hardEnough(position, deep, other, 1)
                ? Optional.of(new PlayExercise(game, position, moment.roll(), deep, of(deep, other)))
                : Optional.empty();
    }

    private boolean hardEnough(Position before, List<PlayVerdict> ranking, Position other, double share) {
        Position best = ranking.get(0).play().result();
        return -of(ranking, other).cost() >= share * settings.cost()
                && -ranking.get(1).cost() >= share * settings.margin()
                && settings.theme().setsApart(before, best, other);
    }

    private static PlayVerdict of(List<PlayVerdict> ranking, Position result) {
        return ranking.stream()
                .filter(ranked -> ranked.play().result().equals(result))
                .findFirst()
                .orElseThrow();
    }

    /** The ranking with the best few and the weaker player's play all looked at equally deeply. */
    private List<PlayVerdict> deepened(Moment moment, List<PlayVerdict> ranking, Position other) {
        List<Play> some = new ArrayList<>();
        List<PlayVerdict> all = new ArrayList<>();
        for (PlayVerdict ranked : ranking) {
            Play play = ranked.play();
            boolean full = ranked.depth().lookahead() == settings.lookahead();
            if (full || some.size() < DEEP || play.result().equals(other)) {
                some.add(play);
            } else {
                all.add(ranked);
            }
        }
        Question question = Question.of(moment.position(), moment.roll()).only(some);
        all.addAll(judge.ask(question, settings.effort(), progress).plays());
        return PlayVerdict.inOrder(all, 1);
    }
}
