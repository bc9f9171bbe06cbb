package org.pipwright.engine.record;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.score.MatchScore;

/** Puts a record together, entry by entry, and refuses what the rules forbid. */
public final class RecordBuilder {
    private final Heading heading;
    private final List<Game> games = new ArrayList<>();
    private final int[] won = new int[2];
    private MatchScore score;
    private boolean matchOver;
    private List<Entry> entries;
    private Referee referee;

    /**
     * A record without games.
     *
     * @param heading who and for what
     */
    public RecordBuilder(Heading heading) {
        this.heading = heading;
        score = heading.rules().match() ? MatchScore.ofLength(heading.rules().length()) : null;
    }

    /**
     * Begins the next game.
     *
     * @throws IllegalEntryException if the game before it, or none, is still to be finished, or the match is over
     */
    public void game() {
        if (referee != null && !referee.over()) {
            throw new IllegalEntryException(
                    "game " + (games.size() + 1) + " has no end yet: expected " + referee.expected());
        }
        close();
        if (matchOver) {
            throw new IllegalEntryException("the match is over at " + won[0] + "-" + won[1] + ": no game follows");
        }
        entries = new ArrayList<>();
        referee = new Referee(heading, this::stakes);
    }

    private Stakes stakes(int side) {
        return score == null
                ? new MoneyStakes(heading.rules().jacoby(), heading.rules().beavers())
                : new MatchStakes(side == 0 ? score : score.swapped());
    }

    private void close() {
        if (referee == null) {
            return;
        }
        int points = referee.points();
        games.add(new Game(entries, points));
        referee = null;
        if (points == 0) {
            return;
        }
        won[points > 0 ? 0 : 1] += Math.abs(points);
        if (score != null && score.ends(points)) {
            matchOver = true;
        } else if (score != null) {
            score = score.after(points);
        }
    }

    /**
     * The game going on.
     *
     * @return its referee
     * @throws IllegalEntryException if no game has begun
     */
    public Referee referee() {
        if (referee == null) {
            throw new IllegalEntryException("no game has begun: expected a line 'game 1'");
        }
        return referee;
    }

    /**
     * Number of the game going on.
     *
     * @return 1 for the first, 0 before it
     */
    public int number() {
        return games.size() + (referee == null ? 0 : 1);
    }

    /**
     * Points of a side in the games before the present one.
     *
     * @param side 0 or 1
     * @return 0 or more
     */
    public int won(int side) {
        return won[side];
    }

    /** Whether a game is going on. */
    boolean playing() {
        return referee != null;
    }

    /** Leaves the game going on, if one is, without a result. */
    void abandon() {
        if (referee != null) {
            games.add(new Game(entries, 0));
            referee = null;
        }
        matchOver = false;
    }

    /**
     * Takes points for granted that no game above has won, before the first roll of a game.
     *
     * @return false if they do not say what the rules are: in a match next to its end, or if they are past it
     */
    boolean believe(int first, int second) {
        won[0] = first;
        won[1] = second;
        int length = heading.rules().length();
        if (score == null) {
            return true;
        }
        if (Math.max(first, second) >= length - 1) {
            return false;
        }
        score = new MatchScore(length - first, length - second, false);
        return true;
    }

    /** How things stand in the game going on; with the last one, whether it ends the match. */
    Stand stand() {
        boolean last = score != null && referee.over() && score.ends(referee.points());
        return referee.stand(number(), last);
    }

    /**
     * Adds an entry to the game going on.
     *
     * @param entry the entry
     * @throws IllegalEntryException if the rules forbid it here
     */
    public void add(Entry entry) {
        Referee rules = referee();
        if (entry instanceof Entry.Turn) {
            Entry.Turn turn = (Entry.Turn) entry;
            rules.turn(turn.side(), turn.roll(), turn.play());
        } else if (entry instanceof Entry.Cube) {
            rules.cube(((Entry.Cube) entry).side(), ((Entry.Cube) entry).action());
        } else if (entry instanceof Entry.Resignation) {
            rules.resign(((Entry.Resignation) entry).side(), ((Entry.Resignation) entry).result());
        }
        entries.add(entry);
    }

    /**
     * The record of all games so far; nothing can be added afterwards but a new game.
     *
     * @return the record
     */
    public GameRecord build() {
        close();
        return new GameRecord(heading, games);
    }
}
