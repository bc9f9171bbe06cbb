package org.pipwright.engine.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.record.Entry;
import org.pipwright.engine.record.Game;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.Rules;
import org.pipwright.engine.score.MatchScore;

/** Plays a record through, turn by turn. The record is legal, so that nothing is checked here. */
public final class Moments {
    private final int number;
    private final MatchScore score;
    private final Rules rules;
    private final List<Moment> moments = new ArrayList<>();

    private CubeGame cube;
    private Position position = Position.start();
    private int onRoll;

    // What the turn going on has come to.
    private CubeState before = CubeState.START;
    private boolean mayDouble;
    private boolean doubled;
    private CubeAction answer;
    private List<String> notes = new ArrayList<>();

    private Moments(int number, MatchScore score, Rules rules) {
        this.number = number;
        this.score = score;
        this.rules = rules;
    }

    /**
     * All turns of a record.
     *
     * @param record the record
     * @return its turns, game by game
     */
    public static List<Moment> of(GameRecord record) {
        Rules rules = record.heading().rules();
        MatchScore score = rules.match() ? MatchScore.ofLength(rules.length()) : null;
        List<Moment> all = new ArrayList<>();
        for (int i = 0; i < record.games().size(); i++) {
            Game game = record.games().get(i);
            all.addAll(new Moments(i, score, rules).play(game.entries()));
            if (score != null && game.points() != 0 && !score.ends(game.points())) {
                score = score.after(game.points());
            }
        }
        return all;
    }

    private List<Moment> play(List<Entry> entries) {
        for (Entry entry : entries) {
            if (!entry.note().isEmpty()) {
                notes.add(entry.note());
            }
            if (entry instanceof Entry.Turn) {
                turn((Entry.Turn) entry);
            } else if (entry instanceof Entry.Cube) {
                cube(((Entry.Cube) entry).action());
            } else if (entry instanceof Entry.Resignation) {
                end(Optional.empty(), Optional.of((Entry.Resignation) entry));
            }
        }
        if (doubled && answer == null) {
            end(Optional.empty(), Optional.empty());
        }
        return moments;
    }

    private void turn(Entry.Turn turn) {
        if (cube == null) {
            onRoll = turn.side();
            cube = new CubeGame(stakes(onRoll));
        } else if (cube.actions().contains(CubeAction.ROLL)) {
            cube.act(CubeAction.ROLL);
        }
        end(Optional.of(turn), Optional.empty());
        if (!turn.play().result().finished()) {
            cube.played();
            onRoll = 1 - onRoll;
            position = turn.play().next();
            before = cube.cube();
            mayDouble = rules.cube() && cube.actions().contains(CubeAction.DOUBLE);
        }
    }

    private void cube(CubeAction action) {
        cube.act(action);
        if (action == CubeAction.DOUBLE) {
            doubled = true;
        } else {
            answer = action;
            if (action == CubeAction.PASS) {
                end(Optional.empty(), Optional.empty());
            }
        }
    }

    private void end(Optional<Entry.Turn> played, Optional<Entry.Resignation> resigned) {
        moments.add(new Moment(
                number,
                moments.size(),
                onRoll,
                position,
                cube.stakes(),
                before,
                moments.isEmpty(),
                mayDouble,
                doubled,
                Optional.ofNullable(answer),
                cube.cube(),
                played,
                resigned,
                notes));
        doubled = false;
        answer = null;
        notes = new ArrayList<>();
    }

    private Stakes stakes(int side) {
        return score == null
                ? new MoneyStakes(rules.jacoby(), rules.beavers())
                : new MatchStakes(side == 0 ? score : score.swapped());
    }
}
