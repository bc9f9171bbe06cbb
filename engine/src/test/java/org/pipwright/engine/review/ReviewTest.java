package org.pipwright.engine.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RandomRecords;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;
import org.pipwright.engine.search.CubeSearch;
import org.pipwright.engine.search.Judgement;

class ReviewTest {
    /** By the quick form of the terms, as luck is measured. */
    private static final int QUICK = -1;

    private final Map<Stakes, CubeTerms> known = new HashMap<>();
    private final CubeSearch search = new CubeSearch(Judgement.by(new HastyEvaluator()));

    private CubeTerms terms(Stakes stakes) {
        return known.computeIfAbsent(stakes, Setting::terms);
    }

    /** What a play leaves its maker: the game won, or what the opponent's best cube action leaves. */
    private double worth(Play play, Stakes stakes, CubeState cube, int lookahead) {
        CubeTerms mine = terms(stakes);
        Position next = play.next();
        if (next.finished()) {
            return mine.won(GameResult.of(next), cube);
        }
        CubeTerms theirs = terms(stakes.swapped());
        CubeValues values = lookahead == QUICK
                ? theirs.values(next, new HastyEvaluator().evaluate(next), cube.swapped())
                : search.values(next, cube.swapped(), theirs, lookahead);
        double best = values.mayDouble()
                ? Math.max(
                        values.noDouble(),
                        Math.min(
                                values.doublePass(),
                                values.mayBeaver()
                                        ? Math.min(values.doubleTake(), values.doubleBeaver())
                                        : values.doubleTake()))
                : values.noDouble();
        return stakes instanceof MoneyStakes ? -best : 1 - best;
    }

    private double best(Position position, Roll roll, Stakes stakes, CubeState cube, int lookahead) {
        return Plays.legal(position, roll).stream()
                .mapToDouble(play -> worth(play, stakes, cube, lookahead))
                .max()
                .orElseThrow();
    }

    /** Every number of every turn of random games, from its definition. */
    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13})
    void withoutLookaheadEverythingIsByDefinition(long seed) {
        GameRecord record = new RandomRecords(seed).next();
        Review review = Setting.review(record, 0);
        assertEquals(
                Moments.of(record),
                review.turns().stream().map(ReviewedTurn::moment).toList());
        for (ReviewedTurn turn :
                review.turns().subList(0, Math.min(40, review.turns().size()))) {
            Moment moment = turn.moment();
            assertEquals(
                    new HastyEvaluator().evaluate(moment.position()),
                    turn.finding().chances());
            moment.played().ifPresent(played -> {
                double best = best(moment.position(), played.roll(), moment.stakes(), moment.rolling(), 0);
                double made = worth(played.play(), moment.stakes(), moment.rolling(), 0);
                Decision decision = turn.decisions().get(turn.decisions().size() - 1);
                assertEquals(Decision.Kind.PLAY, decision.kind());
                assertEquals(made - best, decision.cost(), 1e-6);
                assertEquals(Plays.legal(moment.position(), played.roll()).size() > 1, decision.counted());
                assertEquals(luck(moment, played.roll()), turn.finding().luck().orElseThrow(), 1e-6);
            });
            if (moment.mayDouble()) {
                cubeCosts(turn);
            } else {
                assertTrue(turn.finding().cube().isEmpty());
                assertTrue(turn.decisions().stream().allMatch(each -> each.kind() == Decision.Kind.PLAY));
            }
        }
    }

    private double luck(Moment moment, Roll rolled) {
        double sum = 0;
        int ways = 0;
        for (int one = 1; one <= 6; one++) {
            for (int two = 1; two <= 6; two++) {
                if (!moment.opening() || one != two) {
                    sum += best(moment.position(), Roll.of(one, two), moment.stakes(), moment.rolling(), QUICK);
                    ways++;
                }
            }
        }
        return best(moment.position(), rolled, moment.stakes(), moment.rolling(), QUICK) - sum / ways;
    }

    private void cubeCosts(ReviewedTurn turn) {
        Moment moment = turn.moment();
        CubeValues values = search.values(moment.position(), moment.cube(), terms(moment.stakes()), 0);
        assertEquals(values, turn.finding().cube().orElseThrow());
        int at = 0;
        if (moment.doubled() || moment.played().isPresent()) {
            Decision decision = turn.decisions().get(at++);
            double done = moment.doubled() ? values.doubled() : values.noDouble();
            assertEquals(Decision.Kind.DOUBLE, decision.kind());
            assertEquals(moment.onRoll(), decision.side());
            assertEquals(done - Math.max(values.noDouble(), values.doubled()), decision.cost(), 1e-12);
        }
        if (moment.answer().isPresent()) {
            CubeAction answer = moment.answer().get();
            double gets = answer == CubeAction.PASS
                    ? values.doublePass()
                    : answer == CubeAction.TAKE ? values.doubleTake() : values.doubleBeaver();
            Decision decision = turn.decisions().get(at);
            assertEquals(Decision.Kind.ANSWER, decision.kind());
            assertEquals(1 - moment.onRoll(), decision.side());
            assertTrue(decision.counted());
            assertEquals(values.doubled() - gets, decision.cost(), 1e-12);
        }
    }

    /** With lookahead the plays told of are valued by the search with the cube, the made one always as deeply as the best. */
    @ParameterizedTest
    @CsvSource({"21, 1, 20", "22, 2, 2"})
    void lookaheadValuesAreTheSearchs(long seed, int lookahead, int turns) {
        GameRecord record = new RandomRecords(seed).next();
        GameRecord some = new GameRecord(record.heading(), record.games().subList(0, 1));
        Review review = Setting.review(Beginnings.of(some, turns), lookahead);
        int deep = 0;
        for (ReviewedTurn turn : review.turns()) {
            Moment moment = turn.moment();
            for (PlayVerdict option : turn.finding().options()) {
                int level = option.depth().lookahead();
                deep += level == lookahead ? 1 : 0;
                int by = level == 0 && lookahead > 0 ? QUICK : level;
                assertEquals(worth(option.play(), moment.stakes(), moment.rolling(), by), option.value(), 1e-6);
            }
            moment.played()
                    .ifPresent(played -> assertEquals(
                            turn.finding().options().get(0).depth().lookahead(),
                            turn.finding().options().stream()
                                    .filter(option -> option.play().equals(played.play()))
                                    .findFirst()
                                    .orElseThrow()
                                    .depth()
                                    .lookahead()));
        }
        assertTrue(deep > turns / 2);
    }

    /** At double match point nothing but winning counts: the value of a play is its chance to win. */
    @Test
    void atTheLastPointOnlyWinsCount() {
        GameRecord record = Setting.record("match: 1", "game", "Ada 3-1: 13/9", "Ben 6-2: 24/16");
        for (ReviewedTurn turn : Setting.review(record, 0).turns()) {
            for (PlayVerdict option : turn.finding().options()) {
                assertEquals(option.outcomes().win(), option.value(), 1e-6);
            }
            assertTrue(turn.decisions().stream()
                    .noneMatch(each -> each.kind() == Decision.Kind.DOUBLE && each.counted() && each.cost() < 0));
        }
    }

    /** The same play with and without the Jacoby rule: gammons count in one and not in the other. */
    @Test
    void moneyGamesGoByTheRulesOfTheRecord() {
        String[] lines = {"game", "Ada 3-1: 13/9", "Ben 6-2: 24/16"};
        Finding with = Setting.review(Setting.record("money: jacoby", lines), 0)
                .turns()
                .get(1)
                .finding();
        Finding without = Setting.review(Setting.record("money: no jacoby", lines), 0)
                .turns()
                .get(1)
                .finding();
        assertEquals(with.chances(), without.chances());
        assertFalse(with.cube().orElseThrow().noDouble()
                == without.cube().orElseThrow().noDouble());
    }

    @Test
    void theCrawfordGameHasNoDoubles() {
        GameRecord record = Setting.record(
                "match: 2", "game", "Ada 3-1: 8/5 6/5", "Ben resigns", "game", "Ben 3-1: 8/5 6/5", "Ada 6-2: 24/16");
        List<ReviewedTurn> crawford = Setting.review(record, 0).game(1);
        assertEquals(2, crawford.size());
        assertTrue(crawford.stream().allMatch(turn -> turn.finding().cube().isEmpty()));
    }

    /** In points a match cost is measured by what a point is worth here; in money play it is the cost itself. */
    @Test
    void pointsOfAMatch() {
        GameRecord record = Setting.record("match: 5", "game", "Ada 3-1: 13/9", "Ben 6-2: 13/5");
        for (ReviewedTurn turn : Setting.review(record, 0).turns()) {
            double point =
                    (Setting.TABLE.chanceAfter(((MatchStakes) turn.moment().stakes()).score(), 1)
                                    - Setting.TABLE.chanceAfter(
                                            ((MatchStakes) turn.moment().stakes()).score(), -1))
                            / 2;
            for (Decision decision : turn.decisions()) {
                assertEquals(decision.cost() / point, decision.points(), 1e-9);
                assertEquals(decision.cost(), decision.total());
                assertEquals(Grade.ofCost(decision.points()), decision.grade());
            }
        }
    }

    @Test
    void accountsAddUp() {
        GameRecord record = new RandomRecords(31).next();
        Review review = Setting.review(record, 0);
        for (int side = 0; side < 2; side++) {
            int counted = 0;
            double points = 0;
            double lost = 0;
            double luck = 0;
            int heavy = 0;
            for (ReviewedTurn turn : review.turns()) {
                for (Decision decision : turn.decisions()) {
                    if (decision.side() == side) {
                        assertTrue(decision.counted() || decision.cost() == 0);
                        counted += decision.counted() ? 1 : 0;
                        points += decision.points();
                        lost += decision.total();
                        heavy += decision.grade() == Grade.HEAVY ? 1 : 0;
                    }
                }
                luck += turn.moment().onRoll() == side ? turn.luckTotal() : 0;
            }
            SideAccount account = review.account(side);
            assertEquals(counted, account.decisions());
            assertEquals(points / counted, account.mean(), 1e-9);
            assertEquals(lost, account.lost(), 1e-9);
            assertEquals(luck, account.luck(), 1e-9);
            assertEquals(heavy, account.grades().get(Grade.HEAVY.ordinal()));
            assertEquals(
                    account.mean() * counted,
                    account.playMean() * account.plays() + account.cubeMean() * account.cubes(),
                    1e-9);
        }
    }

    @Test
    void turningPointsAreTheLargestChanges() {
        Review review = Setting.review(new RandomRecords(32).next(), 0);
        List<TurningPoint> rolls = review.turningRolls(4);
        double largest = review.turns().stream()
                .mapToDouble(turn -> Math.abs(turn.luckTotal()))
                .max()
                .orElseThrow();
        assertEquals(4, rolls.size());
        assertEquals(largest, Math.abs(rolls.get(0).change()));
        assertTrue(Math.abs(rolls.get(3).change()) <= Math.abs(rolls.get(2).change()));
        List<TurningPoint> decisions = review.turningDecisions(4);
        double costliest = review.turns().stream()
                .flatMap(turn -> turn.decisions().stream())
                .mapToDouble(Decision::total)
                .min()
                .orElseThrow();
        assertEquals(costliest, decisions.get(0).change());
        assertTrue(decisions.stream().allMatch(point -> point.decision().isPresent()));
    }
}
