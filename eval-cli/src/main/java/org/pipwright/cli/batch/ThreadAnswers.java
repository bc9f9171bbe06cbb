package org.pipwright.cli.batch;

import java.io.IOException;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.parallel.Crew;

/** Answers by judges of this machine, one for each thread; lines are read and answers written by the threads too. */
final class ThreadAnswers implements Answers {
    /** Rounds long enough that threads that are done early wait little. */
    private static final int PIECES = 8;

    private final Crew<Judge> crew;
    private final Effort effort;
    private final int piece;

    /** {@code piece} is how many lines a thread takes at a time: many if an answer takes microseconds. */
    ThreadAnswers(Supplier<Judge> judges, int threads, Effort effort, int piece) {
        crew = new Crew<>(threads, judges);
        this.effort = effort;
        this.piece = piece;
    }

    @Override
    public int most() {
        return PIECES * crew.size() * piece;
    }

    @Override
    public void answer(List<Line> round, Clerk clerk, Consumer<String> texts) {
        String[] answers = new String[(round.size() + piece - 1) / piece];
        crew.run(answers.length, (judge, task) -> {
            int from = task * piece;
            List<Line> some = round.subList(from, Math.min(from + piece, round.size()));
            answers[task] = clerk.text(some.size(), sheet -> write(some, judge, clerk, sheet));
        });
        List.of(answers).forEach(texts);
    }

    private void write(List<Line> lines, Judge judge, Clerk clerk, Sheet sheet) throws IOException {
        for (Line line : lines) {
            Asked asked = clerk.read(line);
            clerk.write(asked, asked.question() == null ? null : judge.ask(asked.question(), effort), sheet);
        }
    }

    @Override
    public void close() {
        crew.workers().forEach(Judge::close);
        crew.close();
    }
}
