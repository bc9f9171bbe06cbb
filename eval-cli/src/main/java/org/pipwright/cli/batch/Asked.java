package org.pipwright.cli.batch;

import org.pipwright.engine.judge.Question;

/**
 * What a line comes to.
 *
 * @param line its number
 * @param question what it asks; null if it cannot be read
 * @param error why it cannot; null if it can
 */
record Asked(long line, Question question, String error) {}
