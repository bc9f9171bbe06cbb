package org.pipwright.cli.desk;

import java.util.List;
import java.util.Optional;
import org.pipwright.cli.report.ReviewCard;
import org.pipwright.cli.report.ReviewCurve;
import org.pipwright.cli.report.ReviewPage;

/**
 * A turn of a record that is gone through, as a page shows it.
 *
 * @param id what the record is called in addresses
 * @param names the two sides
 * @param file where the record comes from; may be empty
 * @param turn the turn
 * @param depth how deeply it was looked at; empty before it was
 * @param about the score before the game, and how it ended
 * @param games the games of the record
 * @param steps ways to other turns
 * @param lines the turns of the game
 * @param curve the first side's chance to win the game; empty before all its turns have been looked at
 * @param accounts how the sides did; none before all turns have been looked at
 * @param progress how far the review has come
 * @param more whether there is more to come
 * @param said the turn in a sentence, for those who hear it
 */
public record RecordView(
        String id,
        List<String> names,
        String file,
        ReviewCard turn,
        String depth,
        String about,
        List<Game> games,
        List<Step> steps,
        List<Line> lines,
        Optional<ReviewCurve> curve,
        List<ReviewPage.Account> accounts,
        String progress,
        boolean more,
        String said) {
    /**
     * A game of the record.
     *
     * @param number its number, from 1
     * @param at id of its first turn
     * @param shown whether the turn is one of it
     */
    public record Game(int number, String at, boolean shown) {}

    /**
     * A way to another turn.
     *
     * @param href its address; empty where there is none
     * @param words what it is called
     * @param key the key that goes there, as {@code KeyboardEvent.key} in lower case
     * @param hint the key as people know it
     */
    public record Step(String href, String words, String key, String hint) {}

    /**
     * A turn of the game.
     *
     * @param at its id
     * @param number its number, from 1
     * @param side who is on roll, 0 or 1
     * @param acts what was done
     * @param shown whether it is the one that is shown
     */
    public record Line(String at, int number, int side, List<ReviewCard.Act> acts, boolean shown) {}

    /**
     * The address of another turn.
     *
     * @param at its id
     * @return where it is shown
     */
    public String to(String at) {
        return "/records/" + id + "?at=" + at;
    }

    RecordView saying(String words) {
        return new RecordView(
                id, names, file, turn, depth, about, games, steps, lines, curve, accounts, progress, more, words);
    }
}
