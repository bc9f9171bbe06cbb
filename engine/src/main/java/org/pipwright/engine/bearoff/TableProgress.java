package org.pipwright.engine.bearoff;

/** Told how far the building of a table has come. */
@FunctionalInterface
public interface TableProgress {
    /** Listens to nothing. */
    TableProgress NONE = share -> {};

    /**
     * Some of the work is done.
     *
     * @param share share of the arrangements that are finished, 0 to 1
     */
    void done(double share);
}
