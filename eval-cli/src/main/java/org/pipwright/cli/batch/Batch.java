package org.pipwright.cli.batch;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.QuestionTrade;
import org.pipwright.engine.parallel.Workforce;

/**
 * Reads lines, has them answered and prints the answers in order. Works in rounds: what is at hand, up to a limit, is
 * answered, printed and flushed; so a slow writer at the other end of the pipe gets each answer at once, and a file goes
 * through in large pieces.
 */
public final class Batch implements AutoCloseable {
    private final Clerk clerk;
    private final Answers answers;
    private long read;

    private Batch(boolean rolls, Lines lines, Answers answers) {
        clerk = new Clerk(rolls, lines);
        this.answers = answers;
    }

    /**
     * A batch answered by this machine's threads.
     *
     * @param rolls whether a line may have a roll
     * @param lines what is asked of each
     * @param judges makes the judge of a thread
     * @param threads threads to use, at least 1
     * @param effort how hard to think about each
     * @param piece lines that a thread takes at a time: many if an answer takes microseconds, one if it takes long
     * @return the batch
     */
    public static Batch here(
            boolean rolls, Lines lines, Supplier<Judge> judges, int threads, Effort effort, int piece) {
        return new Batch(rolls, lines, new ThreadAnswers(judges, threads, effort, piece));
    }

    /**
     * A batch answered by other machines.
     *
     * @param rolls whether a line may have a roll
     * @param lines what is asked of each
     * @param workforce who answers
     * @param trade what they know
     * @param piece lines that are worth sending only together
     * @return the batch
     */
    public static Batch elsewhere(boolean rolls, Lines lines, Workforce workforce, QuestionTrade trade, int piece) {
        return new Batch(rolls, lines, new WorkforceAnswers(workforce, trade, piece));
    }

    /**
     * Answers all lines.
     *
     * @param in the lines
     * @param out where to print the answers
     * @throws IOException if the lines cannot be read
     */
    public void run(InputStream in, PrintWriter out) throws IOException {
        LineReader lines = new LineReader(in);
        out.print(clerk.head());
        for (List<Line> round = round(lines); !round.isEmpty(); round = round(lines)) {
            answers.answer(round, clerk, out::print);
            out.flush();
        }
    }

    /** The next line, waiting for it, and all that are at hand behind it, up to a number; none at the end. */
    private List<Line> round(LineReader lines) throws IOException {
        int most = answers.most();
        List<Line> round = new ArrayList<>();
        do {
            Line line = lines.read();
            if (line == null) {
                break;
            }
            round.add(line);
        } while (round.size() < most && lines.waiting());
        read += round.size();
        return round;
    }

    /**
     * Lines read so far, without blank ones.
     *
     * @return at least 0
     */
    public long read() {
        return read;
    }

    /**
     * Lines answered by an error so far.
     *
     * @return 0 to {@link #read()}
     */
    public long failed() {
        return clerk.failed();
    }

    /** Lets the judges go. */
    @Override
    public void close() {
        answers.close();
    }
}
