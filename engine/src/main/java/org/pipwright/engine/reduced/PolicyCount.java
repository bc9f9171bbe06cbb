package org.pipwright.engine.reduced;

import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** Adds up what a policy's plays give away where its games go. */
final class PolicyCount {
    private static final int POLICY = 0;
    private static final int BEST = 1;

    private final ReducedGame game;
    private final ReducedTable table;
    private final NetJudgement net;
    private final Followers policy;
    private final Followers best;
    private final Sides sides;
    private final ErrorSummary.Collector visited = new ErrorSummary.Collector();
    private final ErrorSummary.Collector everywhere = new ErrorSummary.Collector();
    private double lostStarting;
    private double lostSecond;
    private double decisions;

    PolicyCount(ReducedTable table, NetJudgement net) {
        this.game = table.game();
        this.table = table;
        this.net = net;
        sides = game.sides();
        policy = new Followers(game, net.choices());
        best = new Followers(game, table.choices());
    }

    /** The policy's value from the visits of games that it starts and of those that it does not. */
    PolicyValue of(Visits starting, Visits second) {
        for (int opponent = 1; opponent < sides.size(); opponent++) {
            Rows rows = new Rows(sides, opponent);
            for (int me = 1; me < sides.size(); me++) {
                if (game.playable(me, opponent)) {
                    add(rows, me, opponent, starting, second);
                }
            }
        }
        return withOpenings();
    }

    private void add(Rows rows, int me, int opponent, Visits starting, Visits second) {
        int cell = game.cell(me, opponent);
        double ownStarting = starting.of(POLICY, cell);
        double ownSecond = second.of(POLICY, cell);
        double error = Math.abs(net.equity(cell) - table.values()[cell]);
        everywhere.add(error, 1);
        visited.add(error, ownStarting + ownSecond + starting.of(BEST, cell) + second.of(BEST, cell));
        if (ownStarting + ownSecond == 0) {
            return;
        }
        double given = 0;
        for (Roll roll : Roll.all()) {
            given += roll.probability() * given(rows, me, opponent, roll);
            decisions += roll.probability() * (ownStarting + ownSecond) / 2 * decision(rows, me, roll);
        }
        lostStarting += ownStarting * given;
        lostSecond += ownSecond * given;
    }

    /** Adds the opening rolls of the games that the policy starts. */
    private PolicyValue withOpenings() {
        int start = game.cell(Position.start(game.checkers()));
        int me = start / sides.size();
        int opponent = start % sides.size();
        Rows rows = new Rows(sides, opponent);
        double equity = 0;
        for (Roll roll : Roll.opening()) {
            double chance = 1.0 / Roll.opening().size();
            equity -= chance * table.values()[best.cell(rows, me, opponent, roll.index())];
            lostStarting += chance * given(rows, me, opponent, roll);
            decisions += chance / 2 * decision(rows, me, roll);
        }
        return new PolicyValue(
                equity - lostStarting,
                -equity - lostSecond,
                (lostStarting + lostSecond) / 2,
                decisions,
                visited.summary(),
                everywhere.summary());
    }

    /** Exact equity that the policy's play gives away. */
    private double given(Rows rows, int me, int opponent, Roll roll) {
        int chosen = policy.cell(rows, me, opponent, roll.index());
        return table.values()[chosen] - table.values()[best.cell(rows, me, opponent, roll.index())];
    }

    /** 1 if plays of the roll differ in their result, else 0. */
    private int decision(Rows rows, int me, Roll roll) {
        int[] first = game.lists().first();
        int[] landings = game.lists().landings();
        int found = -1;
        for (int play = first[me * Roll.COUNT + roll.index()];
                play < first[me * Roll.COUNT + roll.index() + 1];
                play++) {
            if (landings[play] < 0 && found >= 0) {
                return 0;
            }
            if ((landings[play] & rows.blocked) == 0) {
                int cell = rows.row[rows.hits(landings[play])] + game.lists().results()[play];
                if (found >= 0 && cell != found) {
                    return 1;
                }
                found = cell;
            }
        }
        return 0;
    }
}
