package org.pipwright.bench.kills;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** A command that works for some seconds and leaves something in a folder. */
interface Subject {
    /** What the table calls it. */
    String name();

    /** Whether there is something in the folder to go on with; a command that begins anew each time need not ask. */
    default boolean kept(Path folder) {
        return true;
    }

    /**
     * The command.
     *
     * @param folder where it works, which is there
     * @param again whether to go on with what is there, or do it again
     */
    List<String> words(Path folder, boolean again);

    /** Starts it. */
    default Work start(Launcher launcher, Path folder, boolean again) throws IOException {
        return launcher.start(words(folder, again));
    }

    /**
     * What must be the same however often it was disturbed.
     *
     * @param folder where it has worked
     * @param done the process that came to the end
     * @throws IOException if something is missing or damaged
     */
    String bits(Path folder, Work done) throws IOException;

    /** Whether it is refused, in one line, where the cache cannot be written to. */
    default boolean needsCache() {
        return false;
    }
}
