package org.pipwright.engine.files;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.pipwright.engine.text.Excerpt;

/**
 * Keeps what long work has found in a text file, so that it can be stopped and resumed. Lines of the file: form and version;
 * what the work is about; what was found; the SHA-256 of all before. Written atomically. Used by one thread at a time.
 */
public final class WorkFile {
    static final long INTERVAL = Duration.ofSeconds(10).toNanos();

    /** Keeps nothing, of any work. */
    public static final WorkFile NONE = new WorkFile(null, null, List.of(), false);

    private final Kind kind;
    private final Path path;
    private final List<String> judge;
    private final boolean resume;
    private LongSupplier clock = System::nanoTime;
    private long lastTried = clock.getAsLong();
    private String problem;
    private Consumer<String> warn = line -> {};

    /**
     * What tells the files of one kind of work from others.
     *
     * @param work what the work is called in messages: one word
     * @param form name and version of the form: the first line
     * @param found with what the first line of what was found begins, and no line before it
     * @param mostBytes far above the size of any such file
     * @param older forms of before that are still read; each of their lines is made one of the present form
     */
    public record Kind(
            String work, String form, String found, long mostBytes, Map<String, UnaryOperator<String>> older) {
        /**
         * A kind with one form.
         *
         * @param work what the work is called in messages: one word
         * @param form name and version of the form
         * @param found with what the first line of what was found begins
         * @param mostBytes far above the size of any such file
         */
        public Kind(String work, String form, String found, long mostBytes) {
            this(work, form, found, mostBytes, Map.of());
        }

        /**
         * The same, which reads a form of before as well.
         *
         * @param before name and version of that form
         * @param line makes a line of then one of the present form
         * @return the kind
         */
        public Kind reading(String before, UnaryOperator<String> line) {
            Map<String, UnaryOperator<String>> all = new HashMap<>(older);
            all.put(before, line);
            return new Kind(work, form, found, mostBytes, Map.copyOf(all));
        }

        /**
         * A file for work that begins anew; an old file is replaced.
         *
         * @param path the file; its folder must exist
         * @param judge what judges, one thing a line, such as the checksum of the net
         * @return the file
         */
        public WorkFile fresh(Path path, List<String> judge) {
            return new WorkFile(this, path, judge, false);
        }

        /**
         * The file of work to go on with.
         *
         * @param path the file; it must exist
         * @param judge what judges, one thing a line, such as the checksum of the net
         * @return the file
         */
        public WorkFile resumed(Path path, List<String> judge) {
            return new WorkFile(this, path, judge, true);
        }
    }

    private WorkFile(Kind kind, Path path, List<String> judge, boolean resume) {
        this.kind = kind;
        this.path = path;
        this.judge = List.copyOf(judge);
        this.resume = resume;
    }

    /**
     * Refuses a file that is for other work.
     *
     * @param wanted what the work is
     * @throws IllegalArgumentException if the file keeps something of another kind
     */
    public void require(Kind wanted) {
        if (path != null && kind != wanted) {
            throw new IllegalArgumentException("a file of a " + kind.work() + ", not of a " + wanted.work());
        }
    }

    /**
     * What was found so far.
     *
     * @param task all else that decides what is found, one thing a line
     * @return the lines that were written; empty if the work begins anew
     * @throws InvalidWorkFileException if the file is damaged, or has another judge or task
     */
    public Optional<List<String>> read(List<String> task) {
        if (!resume) {
            return Optional.empty();
        }
        try {
            if (Files.size(path) > kind.mostBytes()) {
                throw damaged("it is too large");
            }
            return Optional.of(parse(Files.readString(path), about(task)));
        } catch (CharacterCodingException e) {
            throw damaged("it is not text");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private List<String> parse(String text, List<String> about) {
        String form = text.lines().findFirst().filter(kind.older()::containsKey).orElse(kind.form());
        if (!text.startsWith(form + "\n")) {
            throw damaged("it does not begin with '" + kind.form() + "'");
        }
        UnaryOperator<String> present = kind.older().getOrDefault(form, UnaryOperator.identity());
        List<String> lines = SealedLines.parse(form, text).orElseThrow(() -> damaged("its checksum is wrong")).stream()
                .map(present)
                .toList();
        int begin = 0;
        while (begin < lines.size() && !lines.get(begin).startsWith(kind.found())) {
            begin++;
        }
        requireSame(lines.subList(0, begin), about);
        return lines.subList(begin, lines.size());
    }

    private void requireSame(List<String> found, List<String> wanted) {
        for (int i = 0; i < Math.max(found.size(), wanted.size()); i++) {
            String there = i < found.size() ? found.get(i) : "nothing more";
            String here = i < wanted.size() ? wanted.get(i) : "nothing more";
            if (!there.equals(here)) {
                throw new InvalidWorkFileException("'" + path + "' belongs to another " + kind.work() + ": it has '"
                        + Excerpt.of(there) + "' where '" + Excerpt.of(here)
                        + "' is asked for; ask for the same, or begin anew with --save");
            }
        }
    }

    /**
     * Says that what was read makes no sense.
     *
     * @param how what is wrong, in a few words
     * @return to be thrown
     */
    public InvalidWorkFileException damaged(String how) {
        return new InvalidWorkFileException("'" + path + "' is not a whole " + kind.work() + " file (" + how
                + "): use another copy, or begin anew with --save");
    }

    private List<String> about(List<String> task) {
        List<String> lines = new ArrayList<>(judge);
        lines.addAll(task);
        return lines;
    }

    /**
     * Writes the file at the beginning of the work, so that one that cannot be written is told before it and not after.
     *
     * @param task all that decides what is found but the judge, one thing a line
     * @param found gives what was found, one thing a line
     * @throws UncheckedIOException if that fails; its cause names the file
     */
    public void begin(List<String> task, Supplier<List<String>> found) {
        try {
            write(task, found);
        } catch (IOException e) {
            throw new UncheckedIOException(new FileSystemException(path.toString(), null, Reason.of(e)));
        }
    }

    /**
     * Writes the file if the last time is some seconds ago. Work goes on where that fails, as on a full disk, with the old
     * file as it was: it is tried again some seconds later.
     *
     * @param task all that decides what is found but the judge, one thing a line
     * @param found gives what was found, one thing a line
     */
    public void keep(List<String> task, Supplier<List<String>> found) {
        if (clock.getAsLong() - lastTried > INTERVAL) {
            keepNow(task, found);
        }
    }

    /** Has another clock tell the time, in nanoseconds. */
    WorkFile timedBy(LongSupplier other) {
        clock = other;
        return this;
    }

    /** Writes the file, or says that it cannot if that is new. */
    void keepNow(List<String> task, Supplier<List<String>> found) {
        boolean well = problem == null;
        end(task, found);
        if (well && problem != null) {
            warn.accept(problem + ": going on, and trying again");
        }
    }

    /**
     * Writes the file at the end of the work. Where that fails, {@link #problem} says so: what was found is not lost with it.
     *
     * @param task all that decides what is found but the judge, one thing a line
     * @param found gives what was found, one thing a line
     */
    public void end(List<String> task, Supplier<List<String>> found) {
        try {
            write(task, found);
            problem = null;
        } catch (IOException e) {
            problem = "cannot write '" + Excerpt.of(path.toString()) + "' (" + Reason.of(e) + ")";
        }
    }

    /**
     * Why the file does not have what was found last.
     *
     * @return what went wrong; empty if it was written
     */
    public Optional<String> problem() {
        return Optional.ofNullable(problem);
    }

    /**
     * Has somebody told when the file cannot be written any more.
     *
     * @param listener given a line each time that begins
     * @return this
     */
    public WorkFile warning(Consumer<String> listener) {
        warn = listener;
        return this;
    }

    private void write(List<String> task, Supplier<List<String>> found) throws IOException {
        if (path == null) {
            return;
        }
        lastTried = clock.getAsLong();
        List<String> lines = about(task);
        lines.addAll(found.get());
        byte[] bytes = SealedLines.print(kind.form(), lines).getBytes(StandardCharsets.UTF_8);
        AtomicFile.write(path, out -> out.write(bytes));
    }
}
