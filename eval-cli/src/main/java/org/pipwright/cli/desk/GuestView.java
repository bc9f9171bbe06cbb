package org.pipwright.cli.desk;

import java.util.List;
import java.util.Optional;

/**
 * What a guest sees: what the teacher shows to the class, and a way to guess.
 *
 * @param version number of what is shown
 * @param shown the teacher's view; empty before anything was shown
 * @param actions what can be done about the cube; none where a play is asked for
 * @param guess what the guest has guessed; may be empty
 * @param cost what that costs, once the answer is uncovered; else empty
 * @param grade the cost in a word; else empty
 * @param refused why the last guess was refused; may be empty
 */
public record GuestView(
        int version,
        Optional<ClassView> shown,
        List<String> actions,
        String guess,
        String cost,
        String grade,
        String refused) {
    /**
     * What is asked.
     *
     * @return a sentence
     */
    public String question() {
        return shown.map(ClassView::question).orElse("Nothing is shown yet");
    }

    /**
     * What has happened, for those who hear it.
     *
     * @return a sentence
     */
    public String said() {
        if (!refused.isEmpty()) {
            return refused;
        }
        String uncovered = shown.filter(ClassView::shown).isPresent() ? " The answer is uncovered." : "";
        return question() + uncovered + (guess.isEmpty() ? "" : " You guessed " + guess + ".");
    }
}
