package org.pipwright.engine.review;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
    List<PlayOption> options(Question question, Play made) {
        Verdict verdict = judge.ask(question, settings.effort(), progress);
        List<PlayOption> all =
                verdict.plays().stream().map(PlayChoice::option).collect(Collectors.toCollection(ArrayList::new));
        int deepest = all.get(0).depth().lookahead();
        if (find(all, made).depth().lookahead() < deepest) {
            Effort deep = Effort.lookahead(deepest).withRaces(settings.simulateRaces());
            Verdict alone = judge.ask(question.only(List.of(made)), deep, progress);
            replace(all, Map.of(find(all, made).play(), option(alone.best())));
        }
        if (settings.games() > 0 && Grade.ofCost(cost(all, made) / verdict.point()) != Grade.FINE) {
            playOut(all, question, made);
        }
        return Listing.byValue(first(all, made, TOLD), TOLD + 1, PlayOption::value);
    }

    private static PlayOption option(PlayVerdict play) {
        return new PlayOption(play.play(), play.value(), play.outcomes(), play.depth());
    }

    /** What a play costs against the best of some: at most 0. */
    static double cost(List<PlayOption> all, Play made) {
        return Math.min(0, find(all, made).value() - all.get(0).value());
    }

    private static PlayOption find(List<PlayOption> all, Play play) {
        return all.stream()
                .filter(option -> option.play().result().equals(play.result()))
                .findFirst()
                .orElseThrow();
    }

    private static void replace(List<PlayOption> all, Map<Play, PlayOption> better) {
        all.replaceAll(option -> better.getOrDefault(option.play(), option));
        all.sort(PlayOption.BEST_FIRST);
    }

    /** Games tell the values; the chances stay as they are. */
    private void playOut(List<PlayOption> all, Question question, Play made) {
        List<Play> some =
                first(all, made, PLAYED_OUT).stream().map(PlayOption::play).collect(Collectors.toList());
        Map<Play, PlayOption> played = new HashMap<>();
        for (PlayVerdict play :
                judge.ask(question.only(some), settings.playingOut(), progress).plays()) {
            PlayOption option = find(all, play.play());
            played.put(option.play(), new PlayOption(option.play(), play.value(), option.outcomes(), play.depth()));
        }
        replace(all, played);
    }

    /** The best of some plays, and the one that was made. */
    private static List<PlayOption> first(List<PlayOption> all, Play made, int most) {
        List<PlayOption> first = new ArrayList<>(all.subList(0, Math.min(most, all.size())));
        PlayOption its = find(all, made);
        if (!first.contains(its)) {
            first.add(its);
        }
        return first;
    }
}
