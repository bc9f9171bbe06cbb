package org.pipwright.engine.drill;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import org.pipwright.engine.duel.Entrant;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.evaluation.StoppableEvaluator;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;

/** Plays numbered games and asks an examiner about some moments of each. Serves one thread. */
final class GameMoments implements AutoCloseable {
    /** Moments of a game that are looked at: a few, so that a sheet draws from many games. */
    private static final int LOOKED_AT = 8;

    private final DrillSettings settings;
    private final Player player;
    private final Examiner examiner;
    private final Judge judge;
    private final Predicate<Kind> wanted;
    private final GameLoop loop = new GameLoop();

    /**
     * One that looks for mistakes of a weaker player, until it is told to stop: one position may take long. It leaves a game as
     * soon as an exercise of that kind is not wanted, which is never wanted again.
     */
    static GameMoments of(
            DrillSettings settings,
            Knowledge knowledge,
            Entrant weaker,
            Predicate<Kind> wanted,
            BooleanSupplier stopped) {
        Judge judge = new Judge(knowledge, 1);
        Progress progress = Progress.until(stopped);
        Examiner examiner = settings.theme().cube()
                ? new CubeExaminer(settings, judge, progress, knowledge.terms(), CubeOpinion.of(weaker))
                : new PlayExaminer(settings, judge, progress, weaker.players().get());
        // The games only have to be sensible: what is asked about in them is judged in full.
        PositionEvaluator evaluator = knowledge.judgement().evaluator().quick();
        Player player = new LoosePlayer(new StoppableEvaluator(evaluator, stopped));
        return new GameMoments(settings, player, examiner, judge, wanted);
    }

    /** Closes the examiner's judge in the end. */
    private GameMoments(DrillSettings settings, Player player, Examiner examiner, Judge judge, Predicate<Kind> wanted) {
        this.judge = judge;
        this.wanted = wanted;
        this.settings = settings;
        this.player = player;
        this.examiner = examiner;
    }

    /**
     * Looks for a question in a game, the same whoever asks and whenever, but for those of kinds no longer wanted.
     *
     * @param game its number
     * @return the first exercise found among moments taken in random order
     */
    Optional<Found> question(long game) {
        Dice choices = Dice.ofGame(settings.seed(), 2 * game + 1);
        List<Moment> moments = moments(game, choices);
        Promises promises = new Promises(wanted);
        for (int i = 0; i < LOOKED_AT && !moments.isEmpty() && !promises.broken(); i++) {
            Moment moment = moments.remove(choices.below(moments.size()));
            Optional<Found> question = examiner.question(moment, game, choices, promises);
            if (question.isPresent()) {
                return question;
            }
        }
        return Optional.empty();
    }

    private List<Moment> moments(long game, Dice choices) {
        Dice dice = Dice.ofGame(settings.seed(), 2 * game);
        List<Moment> moments = new ArrayList<>();
        loop.play(Position.start(), dice.opening(), player, player, dice, choices, (planes, roll, legal, chosen) -> {
            Position position = Position.ofPlanes(planes, 0);
            if (settings.theme().comesUpIn(position) && Lesson.usual(position)) {
                moments.add(new Moment(position, roll));
            }
        });
        return moments;
    }

    @Override
    public void close() {
        judge.close();
    }
}
