package org.pipwright.cli.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.pipwright.engine.roll.Roll;

/**
 * The board as a page shows it.
 *
 * @param query the address without its path
 * @param fields the same as fields that forms carry along
 * @param svg the picture
 * @param words the board in words
 * @param homeLeft whether the home is at the left
 * @param places what can be picked, in the order of the board
 * @param refused why the last move was refused; may be empty
 * @param sides one line for each side: checkers and pips
 * @param tools what the buttons do
 * @param picked the place that is picked, if its checkers can be counted
 * @param text the position as text
 * @param typed a position that could not be used; else empty
 * @param roll the dice; empty before they are thrown
 * @param withoutDice the address before they are thrown
 * @param stakes the fields of the form that says what is played for
 * @param errors what could not be used, by the part of the page where it is told
 * @param answer what the net says of it
 * @param play the play that was chosen
 * @param next the lookahead that is to come next; negative if nothing more is to come
 * @param ahead how far it is to look ahead
 * @param said what is told to those who do not see the change
 */
public record BoardView(
        String query,
        Map<String, String> fields,
        String svg,
        String words,
        boolean homeLeft,
        List<PlaceLink> places,
        String refused,
        List<String> sides,
        List<Tool> tools,
        Optional<Picked> picked,
        String text,
        String typed,
        String roll,
        String withoutDice,
        Map<String, String> stakes,
        Map<String, String> errors,
        AnswerView answer,
        Optional<PlayView> play,
        int next,
        int ahead,
        String said) {
    private static final List<String> STAKES =
            List.of("for", "no-jacoby", "beavers", "away", "crawford", "cube", "owner");

    /**
     * A place to be picked or moved to.
     *
     * @param name its name in addresses
     * @param css where it lies
     * @param href what a click leads to
     * @param label what is there, in words
     * @param side whose checkers are there: mine, theirs or none
     * @param picked whether it is picked
     */
    public record PlaceLink(String name, String css, String href, String label, String side, boolean picked) {}

    /**
     * Something that a button does to the board.
     *
     * @param words what it says
     * @param href where it leads
     */
    public record Tool(String words, String href) {}

    /**
     * A place whose checkers can be typed.
     *
     * @param name its name in addresses
     * @param words its name in sentences
     * @param mine checkers of the side on roll there
     * @param theirs checkers of the opponent there
     * @param mostMine how many there could be; 0 if there can be none
     * @param mostTheirs the same for the opponent
     */
    public record Picked(String name, String words, int mine, int theirs, int mostMine, int mostTheirs) {}

    /**
     * The fields that a form carries along because it has none of its own for them.
     *
     * @param own names of its own
     * @return the others, with their values
     */
    public List<Map.Entry<String, String>> carried(String... own) {
        List<String> names = List.of(own);
        return fields.entrySet().stream()
                .filter(field ->
                        !names.contains(field.getKey()) && !field.getKey().equals("pick"))
                .collect(Collectors.toList());
    }

    /**
     * The fields that the form of stakes carries along.
     *
     * @return all that are not its own
     */
    public List<Map.Entry<String, String>> carriedByStakes() {
        return carried(STAKES.toArray(String[]::new));
    }

    /**
     * An error.
     *
     * @param part the part of the page
     * @return what it has to tell; empty if nothing
     */
    public String error(String part) {
        return errors.getOrDefault(part, "");
    }

    /**
     * The rolls to choose from.
     *
     * @return all 21
     */
    public List<String> rolls() {
        return Roll.all().stream().map(Roll::toString).collect(Collectors.toList());
    }

    /** Everything that is wrong, for those who do not see where it is told. */
    static String together(String refused, Map<String, String> errors) {
        List<String> all = new ArrayList<>(errors.values());
        if (!refused.isEmpty()) {
            all.add(refused);
        }
        return String.join(". ", all);
    }

    /** Names of the fields of the form of stakes. */
    static List<String> stakesFields() {
        return STAKES;
    }
}
