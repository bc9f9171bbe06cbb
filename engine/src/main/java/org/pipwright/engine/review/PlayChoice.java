package org.pipwright.engine.review;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.pipwright.engine.cube.CubefulSearch;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Depth;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.ranking.RankedPlay;
import org.pipwright.engine.record.Entry;
import org.pipwright.engine.rollout.RolloutLine;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.Narrowing;
import org.pipwright.engine.search.PlaySearch;

/**
 * Values the plays of a roll with the cube and at the score: all of them without lookahead, then fewer and fewer with more.
 * The play that was made is always looked at as deeply as any.
 */
final class PlayChoice {
    /** How many plays are told of at most, besides the one that was made. */
    private static final int TOLD = 5;

    /** How many of them are played out, besides the one that was made. */
    private static final int PLAYED_OUT = 3;

    private final PlaySearch chances;
    private final CubefulSearch cube;
    private final Games games;
    private final int lookahead;

    PlayChoice(PlaySearch chances, CubefulSearch cube, Games games, int lookahead) {
        this.chances = chances;
        this.cube = cube;
        this.games = games;
        this.lookahead = lookahead;
    }

    /** The best plays and the one that was made, best first. */
    List<PlayOption> options(Position position, Entry.Turn turn, Worth worth) {
        List<PlayOption> all = new ArrayList<>();
        for (RankedPlay ranked : chances.rank(position, turn.roll(), 0)) {
            double value = worth.at(ranked.play(), ranked.outcomes());
            all.add(new PlayOption(ranked.play(), value, ranked.outcomes(), Depth.STATIC));
        }
        all.sort(PlayOption.BEST_FIRST);
        if (all.size() > 1) {
            for (int level = 1; level <= lookahead; level++) {
                deepen(all, level, position, turn, worth);
            }
            if (games.wanted() && Grade.ofCost(cost(all, turn.play()) / worth.point()) != Grade.FINE) {
                playOut(all, position, turn, worth);
            }
        }
        return told(all, turn.play());
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

    /** Those close to the best so far, and the play that was made. */
    private static List<PlayOption> close(List<PlayOption> all, Play made, int most, double within) {
        List<PlayOption> close = all.stream()
                .limit(most)
                .filter(option ->
                        option.depth().lookahead() == all.get(0).depth().lookahead()
                                && option.value() >= all.get(0).value() - within)
                .collect(Collectors.toCollection(ArrayList::new));
        PlayOption its = find(all, made);
        if (!close.contains(its)) {
            close.add(its);
        }
        return close;
    }

    private void deepen(List<PlayOption> all, int level, Position position, Entry.Turn turn, Worth worth) {
        List<Narrowing> narrowings = LookaheadSettings.DEFAULT.root();
        Narrowing narrowing = narrowings.get(Math.min(level, narrowings.size()) - 1);
        List<PlayOption> kept = close(all, turn.play(), narrowing.most(), narrowing.within() * worth.point());
        Map<Play, PlayOption> deeper = new LinkedHashMap<>();
        List<Play> plays = kept.stream().map(PlayOption::play).collect(Collectors.toList());
        for (RankedPlay ranked : chances.rank(position, turn.roll(), plays, level)) {
            double value = worth.searched(ranked.play(), cube, level);
            deeper.put(ranked.play(), new PlayOption(ranked.play(), value, ranked.outcomes(), new Depth(level)));
        }
        all.replaceAll(option -> deeper.getOrDefault(option.play(), option));
        all.sort(PlayOption.BEST_FIRST);
    }

    private void playOut(List<PlayOption> all, Position position, Entry.Turn turn, Worth worth) {
        double within = LookaheadSettings.DEFAULT.root().get(0).within() * worth.point();
        List<Play> plays = close(all, turn.play(), PLAYED_OUT, within).stream()
                .map(PlayOption::play)
                .collect(Collectors.toList());
        RolloutReport report = games.compare(position, turn.roll(), plays);
        Map<Play, PlayOption> played = new LinkedHashMap<>();
        for (RolloutLine line : report.lines()) {
            Play play = plays.get(line.candidate());
            Depth depth = new Depth(0, report.trials(), line.equity().standardError());
            played.put(play, new PlayOption(play, worth.at(play, line.outcomes()), line.outcomes(), depth));
        }
        all.replaceAll(option -> played.getOrDefault(option.play(), option));
        all.sort(PlayOption.BEST_FIRST);
    }

    private static List<PlayOption> told(List<PlayOption> all, Play made) {
        List<PlayOption> told = new ArrayList<>(all.subList(0, Math.min(TOLD, all.size())));
        PlayOption its = find(all, made);
        if (!told.contains(its)) {
            told.add(its);
        }
        return told;
    }
}
