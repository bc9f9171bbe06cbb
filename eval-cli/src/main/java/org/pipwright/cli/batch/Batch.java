package org.pipwright.cli.batch;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.ErrorJson;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.position.InvalidPositionException;

/**
 * Reads lines, has them answered by a crew and prints the answers in order. Works in rounds: what is at hand, up to a
 * limit, is shared out, printed and flushed; so a slow writer at the other end of the pipe gets each answer at once, and a
 * file goes through in large pieces.
 */
public final class Batch {
    private static final JsonFactory FACTORY = new JsonFactoryBuilder()
            .enable(JsonWriteFeature.ESCAPE_NON_ASCII)
            .rootValueSeparator(System.lineSeparator())
            .build();

    private final boolean rolls;
    private final int piece;
    private final AtomicLong failed = new AtomicLong();
    private long read;

    /**
     * A batch.
     *
     * @param rolls whether a line may have a roll
     * @param piece lines that a thread takes at a time: many if an answer takes microseconds, one if it takes long
     */
    public Batch(boolean rolls, int piece) {
        this.rolls = rolls;
        this.piece = piece;
    }

    /**
     * Answers all lines.
     *
     * @param in the lines
     * @param out where to print the answers
     * @param threads threads to use, at least 1
     * @param hire makes what one thread answers with
     * @throws IOException if the lines cannot be read
     */
    public void run(InputStream in, PrintWriter out, int threads, Supplier<Answerer> hire) throws IOException {
        LineReader lines = new LineReader(in);
        int most = 8 * threads * piece;
        try (Crew<Answerer> crew = new Crew<>(threads, hire)) {
            try {
                for (List<Line> round = round(lines, most); !round.isEmpty(); round = round(lines, most)) {
                    answer(round, crew, out);
                }
            } finally {
                crew.workers().forEach(Answerer::close);
            }
        }
    }

    /** The next line, waiting for it, and all that are at hand behind it, up to a number; none at the end. */
    private List<Line> round(LineReader lines, int most) throws IOException {
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

    private void answer(List<Line> round, Crew<Answerer> crew, PrintWriter out) {
        String[] answers = new String[(round.size() + piece - 1) / piece];
        crew.run(answers.length, (worker, task) -> {
            int from = task * piece;
            answers[task] = answer(round.subList(from, Math.min(from + piece, round.size())), worker);
        });
        for (String answer : answers) {
            out.print(answer);
        }
        out.flush();
    }

    private String answer(List<Line> lines, Answerer worker) {
        StringWriter text = new StringWriter(1024 * lines.size());
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            for (Line line : lines) {
                String error = error(line, worker, json);
                if (error != null) {
                    failed.incrementAndGet();
                    ErrorJson.write(json, line.number(), error);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("writing to a string does no I/O", e);
        }
        return text + System.lineSeparator();
    }

    /** Answers a line; if that cannot be, writes nothing and says why. */
    private String error(Line line, Answerer worker, JsonGenerator json) throws IOException {
        if (line.text() == null) {
            return "the line is longer than " + LineReader.LONGEST + " bytes: write one position a line";
        }
        Request request;
        try {
            request = Request.parse(line.text(), rolls);
        } catch (UserError | InvalidPositionException e) {
            return e.getMessage();
        }
        try {
            worker.answer(request, line.number(), json);
            return null;
        } catch (UserError e) {
            return e.getMessage();
        }
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
        return failed.get();
    }
}
