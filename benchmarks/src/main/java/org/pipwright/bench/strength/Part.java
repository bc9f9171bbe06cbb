package org.pipwright.bench.strength;

/**
 * A share of the decisions: those whose number leaves the same remainder, so that every part has its share of each regime.
 *
 * @param part 1 to parts
 * @param parts number of parts
 */
record Part(int part, int parts) {
    static Part parse(String text) {
        if (text.matches("[1-9]\\d{0,3}/[1-9]\\d{0,3}")) {
            String[] numbers = text.split("/");
            Part part = new Part(Integer.parseInt(numbers[0]), Integer.parseInt(numbers[1]));
            if (part.part <= part.parts) {
                return part;
            }
        }
        throw new IllegalArgumentException(
                "--part takes something like 2/4, the second of four parts, not '" + text + "'");
    }

    boolean has(int id) {
        return id % parts == part % parts;
    }
}
