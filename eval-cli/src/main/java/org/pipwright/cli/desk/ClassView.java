package org.pipwright.cli.desk;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is shown to a class: a large board and a question, and the answer once it is uncovered.
 *
 * @param fields the address as fields that forms carry along
 * @param svg the picture
 * @param words the board in words
 * @param question what the class is asked
 * @param note why there is nothing to ask; else empty
 * @param guesses what the class has guessed
 * @param plays plays to choose a guess from; none before the roll
 * @param refused why the last guess was refused; may be empty
 * @param shown whether the answer is uncovered
 * @param turn the address with the answer covered or uncovered, whichever it is not
 * @param back the address of the board
 * @param answer the answer; empty while it is covered
 * @param streamed what the net is asked beside the page; empty if nothing
 * @param tablets how devices of the class come in; empty if they cannot
 */
public record ClassView(
        Map<String, String> fields,
        String svg,
        String words,
        String question,
        String note,
        List<Hand> guesses,
        List<String> plays,
        String refused,
        boolean shown,
        String turn,
        String back,
        Optional<AnswerView> answer,
        String streamed,
        Optional<Tablets> tablets) {
    /**
     * A guess.
     *
     * @param what a play, or what to do about the cube
     * @param hands how many raised a hand for it
     * @param tablets how many tablets guessed it, once the answer is uncovered; else 0
     * @param more the address with one more
     * @param less the address with one fewer
     * @param cost what it costs, once the answer is uncovered; else empty
     * @param grade the cost in a word; else empty
     */
    public record Hand(String what, int hands, int tablets, String more, String less, String cost, String grade) {
        int all() {
            return hands + tablets;
        }
    }

    /**
     * Whether guesses of tablets stand beside the hands.
     *
     * @return whether the answer is uncovered, and tablets can come in
     */
    public boolean counted() {
        return shown && tablets.isPresent();
    }

    /**
     * How wide the bar of a guess is.
     *
     * @param hand the guess
     * @return 0 to 100, where the most frequent guess has 100
     */
    public int share(Hand hand) {
        int most = guesses.stream().mapToInt(Hand::all).max().orElse(0);
        return most == 0 ? 0 : 100 * hand.all() / most;
    }
}
