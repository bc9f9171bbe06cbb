package org.pipwright.engine.review;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.CubefulPlay;
import org.pipwright.engine.cubeplay.CubefulRanker;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.ranking.Listing;
import org.pipwright.engine.record.Entry;
import org.pipwright.engine.rollout.CubefulLine;
import org.pipwright.engine.rollout.CubefulRolloutReport;

/**
 * Values the plays of a roll with the cube and at the score. The play that was made is always looked at as deeply as any.
 */
final class PlayChoice {
    /** How many plays are told of at most, besides the one that was made. */
    private static final int TOLD = 5;

    /** How many of them are played out at most, besides the one that was made. */
    private static final int PLAYED_OUT = 3;

    private final CubefulRanker ranker;
    private final Games games;
    private final int lookahead;

    PlayChoice(CubefulRanker ranker, Games games, int lookahead) {
        this.ranker = ranker;
        this.games = games;
        this.lookahead = lookahead;
    }

    /**
     * The best play, then others and the one that was made by their values, however deeply looked at; cube and stakes are
     * seen from the side that plays.
     */
    List<PlayOption> options(Position position, Entry.Turn turn, CubeState cube, Stakes stakes, double point) {
        List<PlayOption> all = ranker.rank(position, turn.roll(), cube, lookahead).stream()
                .map(PlayChoice::option)
                .collect(Collectors.toCollection(ArrayList::new));
        int deepest = all.get(0).depth().lookahead();
        if (find(all, turn.play()).depth().lookahead() < deepest) {
            CubefulPlay made = ranker.rank(position, turn.roll(), List.of(turn.play()), cube, deepest)
                    .get(0);
            replace(all, Map.of(find(all, turn.play()).play(), option(made)));
        }
        if (games.wanted() && Grade.ofCost(cost(all, turn.play()) / point) != Grade.FINE) {
            playOut(all, turn, cube, stakes);
        }
        return Listing.byValue(first(all, turn.play(), TOLD), TOLD + 1, PlayOption::value);
    }

    private static PlayOption option(CubefulPlay play) {
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

    private void playOut(List<PlayOption> all, Entry.Turn turn, CubeState cube, Stakes stakes) {
        List<PlayOption> some = first(all, turn.play(), PLAYED_OUT);
        CubefulRolloutReport report =
                games.compare(some.stream().map(PlayOption::play).collect(Collectors.toList()), cube, stakes);
        Map<Play, PlayOption> played = new HashMap<>();
        for (CubefulLine line : report.lines()) {
            PlayOption option = some.get(line.candidate());
            Depth depth = new Depth(0, report.trials(), line.value().standardError());
            played.put(option.play(), new PlayOption(option.play(), line.value().mean(), option.outcomes(), depth));
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
