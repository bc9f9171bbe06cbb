package org.pipwright.cli.batch;

import java.util.List;
import java.util.function.Consumer;

/** Who answers the lines of a batch. */
interface Answers extends AutoCloseable {
    /** Lines worth asking at a time. */
    int most();

    /** Answers some lines; the texts come in their order. */
    void answer(List<Line> round, Clerk clerk, Consumer<String> texts);

    @Override
    void close();
}
