package org.pipwright.engine.review;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Progress;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.ranking.Listing;

/**
 * Values the plays of a roll with the cube and at the score. The play that was made is always looked at as deeply as any.
 */
final class PlayChoice {
    /** How many plays are told of at most, besides the one that was made. */
    private static final int TOLD = 5;

    /** How many of them are played out at most, besides the one that was made. */
    private static final int PLAYED_OUT = 3;

    private final Judge judge;
    private final ReviewSettings settings;
    private final Progress progress;

    PlayChoice(Judge judge, ReviewSettings settings, Progress progress) {
        this.judge = judge;
        this.settings = settings;
        this.progress = progress;
    }

    /** The best play, then others and the one that was made by their values, however deeply looked at. */
    List<PlayVerdict> options(Question question, Play made) {
        Verdict verdict = judge.ask(question, settings.effort(), progress);
        List<PlayVerdict> all = verdict.plays();
        int deepest = all.get(0).depth().lookahead();
        if (find(all, made).depth().lookahead() < deepest) {
            Effort deep = Effort.lookahead(deepest).withRaces(settings.simulateRaces());
            Verdict alone = judge.ask(question.only(List.of(made)), deep, progress);
            all = replaced(all, alone.plays(), verdict.point());
        }
        if (settings.games() > 0 && find(all, made).grade() != Grade.FINE) {
            all = replaced(all, playedOut(all, question, made), verdict.point());
        }
        return Listing.byValue(first(all, made, TOLD), TOLD + 1, PlayVerdict::value);
    }

    /** What was found of a play that leads where the given one leads. */
    static PlayVerdict find(List<PlayVerdict> all, Play play) {
        return all.stream()
                .filter(option -> option.play().result().equals(play.result()))
                .findFirst()
                .orElseThrow();
    }

    /** The plays with some of them valued better, in order. */
    private static List<PlayVerdict> replaced(List<PlayVerdict> all, List<PlayVerdict> better, double point) {
        List<PlayVerdict> some = new ArrayList<>(all);
        better.forEach(play -> some.set(some.indexOf(find(some, play.play())), play));
        return PlayVerdict.inOrder(some, point);
    }

    /** Games tell the values; the chances stay as they are. */
    private List<PlayVerdict> playedOut(List<PlayVerdict> all, Question question, Play made) {
        List<Play> some =
                first(all, made, PLAYED_OUT).stream().map(PlayVerdict::play).collect(Collectors.toList());
        List<PlayVerdict> played = new ArrayList<>();
        for (PlayVerdict play :
                judge.ask(question.only(some), settings.playingOut(), progress).plays()) {
            PlayVerdict option = find(all, play.play());
            played.add(new PlayVerdict(
                    option.play(),
                    play.value(),
                    option.outcomes(),
                    play.depth(),
                    option.lookahead(),
                    play.basis(),
                    play.cost(),
                    play.points()));
        }
        return played;
    }

    /** The best of some plays, and the one that was made. */
    private static List<PlayVerdict> first(List<PlayVerdict> all, Play made, int most) {
        List<PlayVerdict> first = new ArrayList<>(all.subList(0, Math.min(most, all.size())));
        PlayVerdict its = find(all, made);
        if (!first.contains(its)) {
            first.add(its);
        }
        return first;
    }
}
