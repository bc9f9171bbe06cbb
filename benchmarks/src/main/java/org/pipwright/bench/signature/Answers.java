package org.pipwright.bench.signature;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.pipwright.bench.Judgements;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.TableFolder;
import org.pipwright.engine.bearoff.TableListener;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.ExactCube;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.CubefulRanker;
import org.pipwright.engine.cubeplay.TermsByStakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.matchtable.MatchTable;
import org.pipwright.engine.matchtable.MatchTerms;
import org.pipwright.engine.matchtable.ShippedMatchTable;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.review.ReviewFile;
import org.pipwright.engine.review.ReviewListener;
import org.pipwright.engine.review.ReviewSettings;
import org.pipwright.engine.review.ReviewedTurn;
import org.pipwright.engine.review.Reviews;
import org.pipwright.engine.rollout.CubefulRolloutReport;
import org.pipwright.engine.rollout.CubefulRollouts;
import org.pipwright.engine.rollout.CubefulStart;
import org.pipwright.engine.rollout.RolloutFile;
import org.pipwright.engine.rollout.RolloutListener;
import org.pipwright.engine.rollout.RolloutReport;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import org.pipwright.engine.search.CubeSearch;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.PlaySearch;

/** What a net, with the exact tables, says to fixed questions of every kind: lines of text, numbers to four digits. */
final class Answers {
    private static final int THREADS = 2;

    private final Supplier<Judgement> judgements;
    private final Function<Stakes, CubeTerms> terms;

    Answers(Model model) {
        judgements = Judgements.withTables(model, THREADS);
        ExactCube exact = new ExactCube(
                EndgameTables.standard(TableFolder.ofUser(System.getenv()), THREADS, TableListener.SILENT));
        MatchTable matches = ShippedMatchTable.load();
        terms = stakes -> stakes instanceof MoneyStakes
                ? new MoneyTerms((MoneyStakes) stakes, exact)
                : new MatchTerms((MatchStakes) stakes, matches);
    }

    /** Plays ranked without the cube. */
    List<String> rank(List<Position> positions, int lookahead) {
        try (PlaySearch search = new PlaySearch(judgements, LookaheadSettings.DEFAULT, THREADS)) {
            return lines(positions, i -> search.rank(positions.get(i), Fixed.roll(i), lookahead).stream()
                    .map(play -> Fixed.roll(i) + " " + play.play() + " " + play.depth() + " " + number(play.equity()))
                    .collect(Collectors.toList()));
        }
    }

    /** Plays ranked with the cube. */
    List<String> rank(List<Position> positions, Setting setting, int lookahead) {
        try (CubefulRanker ranker = new CubefulRanker(judgements, () -> terms.apply(setting.stakes()), THREADS)) {
            return lines(positions, i -> ranker.rank(positions.get(i), Fixed.roll(i), Setting.CUBE, lookahead).stream()
                    .map(play -> Fixed.roll(i) + " " + play.play() + " " + play.depth() + " "
                            + number(play.value()) + " "
                            + number(play.outcomes().equity()))
                    .collect(Collectors.toList()));
        }
    }

    /** Chances before the roll. */
    List<String> odds(List<Position> positions, int lookahead) {
        try (PlaySearch search = new PlaySearch(judgements, LookaheadSettings.DEFAULT, THREADS)) {
            return lines(positions, i -> List.of(chances(search.odds(positions.get(i), lookahead))));
        }
    }

    /** Values of the cube actions before the roll. */
    List<String> cube(List<Position> positions, Setting setting, int lookahead) {
        CubeSearch search = new CubeSearch(judgements.get());
        CubeTerms mine = terms.apply(setting.stakes());
        return lines(positions, i -> List.of(values(search.values(positions.get(i), Setting.CUBE, mine, lookahead))));
    }

    /** Chances by games without the cube. */
    List<String> rollout(Position from, RolloutSettings settings) {
        try (Rollouts rollouts = new Rollouts(judgements, settings, THREADS)) {
            RolloutReport report = rollouts.odds(from, RolloutFile.NONE, RolloutListener.NONE);
            return report.lines().stream()
                    .map(line -> chances(line.outcomes()) + " "
                            + number(line.equity().standardError()) + " " + number(line.reduction()))
                    .collect(Collectors.toList());
        }
    }

    /** Rolling and doubling compared by games with the cube. */
    List<String> rollout(Position from, Setting setting, RolloutSettings settings) {
        List<CubefulStart> starts =
                List.of(CubefulStart.rolling(from, Setting.CUBE), CubefulStart.rolling(from, Setting.CUBE.taken()));
        try (CubefulRollouts rollouts = new CubefulRollouts(
                () -> judgements.get().evaluator(), () -> new TermsByStakes(terms), settings, THREADS)) {
            CubefulRolloutReport report = rollouts.compare(starts, setting.stakes(), 1, RolloutListener.NONE);
            return report.lines().stream()
                    .map(line -> line.candidate() + " " + number(line.value().mean()) + " "
                            + number(line.value().standardError()) + " " + number(line.passed()))
                    .collect(Collectors.toList());
        }
    }

    /** A game reviewed, of a match or for money. */
    List<String> review(boolean match, int lookahead) {
        Reviews reviews = new Reviews(judgements, terms, new ReviewSettings(lookahead, 0, 1), THREADS);
        List<String> lines = new ArrayList<>();
        for (ReviewedTurn turn : reviews.review(Fixed.record(match), ReviewFile.NONE, ReviewListener.NONE)
                .turns()) {
            lines.add(chances(turn.finding().chances()) + " luck " + number(turn.luckTotal()));
            turn.finding().cube().ifPresent(values -> lines.add(values(values)));
            turn.finding().options().forEach(play -> lines.add(play.play() + " " + number(play.value())));
            turn.decisions().forEach(each -> lines.add(each.kind() + " " + number(each.points())));
        }
        return lines;
    }

    private static List<String> lines(List<Position> positions, Function<Integer, List<String>> answer) {
        return IntStream.range(0, positions.size())
                .boxed()
                .flatMap(i -> answer.apply(i).stream().map(line -> positions.get(i) + " " + line))
                .collect(Collectors.toList());
    }

    private static String chances(Outcomes six) {
        return number(six.win()) + " " + number(six.winGammon()) + " " + number(six.winBackgammon()) + " "
                + number(six.loseGammon()) + " " + number(six.loseBackgammon()) + " " + number(six.equity());
    }

    private static String values(CubeValues values) {
        return "cube " + values.mayDouble() + " " + number(values.noDouble()) + " " + number(values.doubleTake()) + " "
                + number(values.doublePass());
    }

    private static String number(double value) {
        // Not -0.0000 here and 0.0000 there.
        return String.format(Locale.ROOT, "%.4f", Math.round(value * 1e4) / 1e4 + 0.0);
    }
}
