package org.pipwright.engine.duel;

import java.io.Serializable;

/**
 * Numbered pairs.
 *
 * @param from number of the first
 * @param to number behind the last
 */
record Pairs(long from, long to) implements Serializable {}
