package org.pipwright.engine.record;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.PublicApi;

/**
 * A record that is still being written: each entry is checked against the rules before it is added, and the last one can
 * be taken back. Values of this class do not change.
 */
@PublicApi
public final class OpenRecord {
    private final Heading heading;
    private final List<List<Entry>> games;
    private final Stand stand;
    private final GameRecord record;

    private OpenRecord(Heading heading, List<List<Entry>> games) {
        this.heading = heading;
        this.games = games;
        RecordBuilder builder = new RecordBuilder(heading);
        for (List<Entry> game : games) {
            builder.game();
            game.forEach(builder::add);
        }
        stand = builder.stand();
        record = builder.build();
    }

    /**
     * A record whose first game is about to begin.
     *
     * @param heading who plays, and for what
     * @return the record
     */
    public static OpenRecord of(Heading heading) {
        return new OpenRecord(heading, List.of(List.of()));
    }

    /**
     * A record to go on with.
     *
     * @param record what has been played so far
     * @return the same, with a first game about to begin if it has none
     */
    public static OpenRecord of(GameRecord record) {
        return record.games().isEmpty()
                ? of(record.heading())
                : new OpenRecord(
                        record.heading(),
                        record.games().stream().map(Game::entries).toList());
    }

    /**
     * With one entry more.
     *
     * @param entry what happens next in the last game
     * @return the longer record
     * @throws IllegalEntryException if the rules forbid it
     */
    public OpenRecord with(Entry entry) {
        List<Entry> last = new ArrayList<>(games.get(games.size() - 1));
        last.add(entry);
        List<List<Entry>> longer = new ArrayList<>(games.subList(0, games.size() - 1));
        longer.add(List.copyOf(last));
        return new OpenRecord(heading, List.copyOf(longer));
    }

    /**
     * With the next game about to begin.
     *
     * @return the longer record
     * @throws IllegalEntryException if the last game goes on, or the match is over
     */
    public OpenRecord withGame() {
        List<List<Entry>> longer = new ArrayList<>(games);
        longer.add(List.of());
        return new OpenRecord(heading, List.copyOf(longer));
    }

    /**
     * Without the last entry; the first step back from a game about to begin leaves that game.
     *
     * @return the shorter record; the same if nothing has happened yet
     */
    public OpenRecord back() {
        List<List<Entry>> shorter = new ArrayList<>(games);
        if (games.size() > 1 && games.get(games.size() - 1).isEmpty()) {
            shorter.remove(shorter.size() - 1);
        }
        List<Entry> last = shorter.remove(shorter.size() - 1);
        shorter.add(last.isEmpty() ? last : last.subList(0, last.size() - 1));
        return new OpenRecord(heading, List.copyOf(shorter));
    }

    /**
     * How the last game stands.
     *
     * @return position, cube, score and who has to act
     */
    public Stand stand() {
        return stand;
    }

    /**
     * Number of rolls played in the last game.
     *
     * @return 0 or more
     */
    public int turns() {
        return (int) games.get(games.size() - 1).stream()
                .filter(Entry.Turn.class::isInstance)
                .count();
    }

    /**
     * The record as it is now.
     *
     * @return all games so far
     */
    public GameRecord record() {
        return record;
    }
}
