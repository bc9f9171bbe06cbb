package org.pipwright.engine.drill;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;

/** Finds questions about plays. */
final class PlayExaminer implements Examiner {
    /**
     * Without lookahead the weaker choice and the second best have to give away this share of what is asked for, or
     * lookahead, which takes some thirty times as long, is spared.
     */
    private static final double GLANCE = 0.5;

    /** The same with less lookahead than is asked for. */
    private static final double NEARLY = 0.75;

    private final DrillSettings settings;
    private final Judge judge;
    private final Progress progress;
    private final PlayLook look;
    private final Player weaker;
    private final PlayGenerator generator = new PlayGenerator();

    PlayExaminer(DrillSettings settings, Judge judge, Progress progress, Player weaker) {
        this.settings = settings;
        this.judge = judge;
        this.progress = progress;
        this.look = new PlayLook(settings.clarity(), judge, progress);
        this.weaker = weaker;
    }

    @Override
    public Optional<Found> question(Moment moment, long game, Dice choices, Promises promises) {
        Position position = moment.position();
        int[] planes = position.toPlanes();
        int legal = generator.generate(
                planes, 0, moment.roll().high(), moment.roll().low());
        if (legal < 2) {
            return Optional.empty();
        }
        int chosen = weaker.choose(planes, 0, generator, choices);
        Position other = Position.ofPlanes(generator.results(), chosen * Planes.STRIDE);
        // Before anything is judged, which takes a thousand times as long.
        if (legal < Lesson.FEWEST_PLAYS || !contrasts(position, legal, other)) {
            return Optional.empty();
        }
        Question question = Question.of(position, moment.roll());
        if (settings.clarity().lookahead() > 0 && !promising(question, other)) {
            return Optional.empty();
        }
        Why why = new Why(judge, settings.telling(), progress);
        return look.exercise(
                        new Origin.OwnGame(game),
                        question,
                        Optional.of(other),
                        (exercise, share) -> settings.clarity().met(exercise, Math.max(NEARLY, share))
                                && settings.theme().setsApart(exercise)
                                && Lesson.in(exercise, settings.clarity())
                                && why.of(exercise).about(settings.theme())
                                && promises.add(Kind.of(exercise, why.of(exercise), settings.theme())))
                .map(exercise -> new Found(exercise, promises.kinds()));
    }

    /** Whether some legal play, which might be the best, differs from the weaker choice as the theme asks. */
    private boolean contrasts(Position position, int legal, Position other) {
        return IntStream.range(0, legal)
                .mapToObj(i -> Position.ofPlanes(generator.results(), i * Planes.STRIDE))
                .anyMatch(play -> settings.theme().setsApart(position, play, other));
    }

    /** Whether the weaker choice looks like a mistake at a glance, and one play like the best. */
    private boolean promising(Question question, Position other) {
        Effort glance = Effort.lookahead(0).withRaces(false);
        List<PlayVerdict> plays = judge.ask(question, glance, progress).plays();
        return -plays.get(1).cost() >= GLANCE * settings.clarity().margin()
                && plays.stream()
                        .anyMatch(play -> play.play().result().equals(other)
                                && -play.cost() >= GLANCE * settings.clarity().cost());
    }
}
