package org.pipwright.cli.desk;

/**
 * How devices of the class come in, and how many have.
 *
 * @param address what is to be opened there
 * @param code what is to be typed there
 * @param present how many are in
 * @param guessed how many guesses there are
 */
public record Tablets(String address, String code, int present, int guessed) {
    /**
     * How many are in and have guessed.
     *
     * @return a sentence
     */
    public String standing() {
        return present == 0
                ? "No tablet is here yet."
                : (present == 1 ? "1 tablet is here, " : present + " tablets are here, ")
                        + (guessed == 1 ? "1 has guessed." : guessed + " have guessed.");
    }
}
