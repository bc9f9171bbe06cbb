package org.pipwright.cli.batch;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.concurrent.atomic.AtomicLong;
import org.pipwright.cli.console.UserError;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.position.InvalidPositionException;

/** Reads lines and writes answers, for any number of threads; counts lines that had to be answered by an error. */
final class Clerk {
    private static final int USUAL_LENGTH = 1024;

    private final boolean rolls;
    private final Lines lines;
    private final AtomicLong failed = new AtomicLong();

    /** {@code rolls} says whether a line may have a roll. */
    Clerk(boolean rolls, Lines lines) {
        this.rolls = rolls;
        this.lines = lines;
    }

    /** Writes answers one after another. */
    @FunctionalInterface
    interface Writing {
        void to(Sheet sheet) throws IOException;
    }

    /** What a line asks, or why it cannot be read. */
    Asked read(Line line) {
        if (line.text() == null) {
            return failed(line, "the line is longer than " + LineReader.LONGEST + " bytes: write one position a line");
        }
        try {
            return new Asked(line.number(), lines.question(Request.parse(line.text(), rolls)), null);
        } catch (UserError | InvalidPositionException e) {
            return failed(line, e.getMessage());
        }
    }

    private Asked failed(Line line, String error) {
        failed.incrementAndGet();
        return new Asked(line.number(), null, error);
    }

    /** Writes the verdict on a question, or why there is none. */
    void write(Asked asked, Verdict verdict, Sheet sheet) throws IOException {
        if (asked.error() != null) {
            sheet.error(asked.error(), asked.line());
        } else {
            sheet.answer(verdict, asked.line());
        }
    }

    /** What stands above all answers. */
    String head() {
        return lines.head();
    }

    /** About so many answers. */
    String text(int answers, Writing writing) {
        StringWriter text = new StringWriter(USUAL_LENGTH * answers);
        try (Sheet sheet = lines.sheet(text)) {
            writing.to(sheet);
        } catch (IOException e) {
            throw new UncheckedIOException("writing to a string does no I/O", e);
        }
        return text.toString();
    }

    long failed() {
        return failed.get();
    }
}
