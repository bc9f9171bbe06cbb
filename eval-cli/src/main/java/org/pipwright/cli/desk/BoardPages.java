package org.pipwright.cli.desk;

import java.util.Optional;
import java.util.function.Supplier;

/**
 * The last pages of boards that were shown. An address always shows the same board, so its page changes only when a deeper
 * answer is known; a page that is asked for again and again is made once. Pages about a play are not kept: the opponent's
 * replies on them may have come too late.
 */
final class BoardPages {
    private static final int MOST = 64;
    private static final int LONGEST_ADDRESS = 500;

    private final Opinions opinions;
    private final Recent<Shown, String> made = new Recent<>(MOST);

    private record Shown(String query, int lookahead) {}

    /** None yet; an answer is on a page once {@code opinions} know it. */
    BoardPages(Opinions opinions) {
        this.opinions = opinions;
    }

    /**
     * The page of an address.
     *
     * @param query of the address; null for none
     * @param setting what it says
     * @param make makes the page, with the deepest answer that is known
     */
    String of(String query, Setting setting, Supplier<String> make) {
        Optional<Opinions.Known> answer = setting.question()
                .flatMap(question -> opinions.deepest(question, setting.asking().ahead()));
        String address = query == null ? "" : query;
        boolean play = setting.asking().play().isPresent();
        if (answer.isEmpty() || play || address.length() > LONGEST_ADDRESS) {
            return make.get();
        }
        return made.made(new Shown(address, answer.get().lookahead()), make);
    }
}
