package org.pipwright.engine.judge;

/** Answers questions of one kind: without a cube, or with one. */
interface Answering extends AutoCloseable {
    /** The plays of a roll compared. */
    Verdict plays(Question question, Effort effort);

    /** The worth of a position before the roll. */
    Verdict before(Question question, Effort effort);

    @Override
    void close();
}
