package org.pipwright.cli.batch;

/**
 * A line of input.
 *
 * @param number counted from 1, blank lines included
 * @param text the line, without blanks around it; null if it was longer than {@link LineReader#LONGEST}
 */
record Line(long number, String text) {}
