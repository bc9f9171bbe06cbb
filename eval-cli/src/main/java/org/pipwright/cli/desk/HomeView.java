package org.pipwright.cli.desk;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The first page of a desk.
 *
 * @param nets nets that can sit at a table
 * @param folder where records are kept
 * @param error why no table could be laid; may be empty
 * @param opened files of the records that the user opened
 * @param tables tables that are laid
 * @param kept what was played at tables of earlier desks and has not ended
 * @param tablets how devices of the class come in; empty if they cannot
 * @param typed what was typed into the form of a table that could not be laid, by field; empty before
 */
public record HomeView(
        List<String> nets,
        String folder,
        String error,
        List<String> opened,
        List<Laid> tables,
        List<Kept> kept,
        Optional<Tablets> tablets,
        Map<String, String> typed) {
    /**
     * A table.
     *
     * @param number its number
     * @param players who plays
     */
    public record Laid(int number, String players) {}

    /**
     * A game that can be gone on with.
     *
     * @param name name of its record
     * @param words what it is
     */
    public record Kept(String name, String words) {}

    /**
     * What a field of the form begins with.
     *
     * @param field its name
     * @param usual what stands there before anything was typed
     * @return text
     */
    public String field(String field, String usual) {
        return typed.isEmpty() ? usual : typed.getOrDefault(field, "");
    }

    /**
     * Whether a box of the form is ticked to begin with.
     *
     * @param box its name
     * @param usual whether it is before anything was typed
     * @return whether it is
     */
    public boolean ticked(String box, boolean usual) {
        return typed.isEmpty() ? usual : typed.containsKey(box);
    }
}
