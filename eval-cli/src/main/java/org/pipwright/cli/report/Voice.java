package org.pipwright.cli.report;

/**
 * Who is spoken to or about in the reasons of a cube decision.
 *
 * @param doubler the side on roll
 * @param answerer the other side
 */
record Voice(String doubler, String answerer) {
    private static final String YOU = "you";

    /** Nobody in particular. */
    static final Voice REPORT = new Voice("the side on roll", "the opponent");

    /** The side that may double. */
    static final Voice DOUBLER = new Voice(YOU, "your opponent");

    /** The side that answers. */
    static final Voice ANSWERER = new Voice("your opponent", YOU);

    /** The side on roll and what it does, such as {@code you win} or {@code the side on roll wins}. */
    String doubler(String verb) {
        return doubler + " " + form(doubler, verb);
    }

    /** The same of the other side. */
    String answerer(String verb) {
        return answerer + " " + form(answerer, verb);
    }

    /** What the side on roll does besides, without naming it again, such as {@code lose} or {@code loses}. */
    String doublerAlso(String verb) {
        return form(doubler, verb);
    }

    /** The same of the other side. */
    String answererAlso(String verb) {
        return form(answerer, verb);
    }

    private static String form(String who, String verb) {
        if (who.equals(YOU)) {
            return verb;
        }
        return verb.equals("have") ? "has" : verb + "s";
    }
}
