package org.pipwright.bench.kills;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.InvalidRecordException;
import org.pipwright.engine.record.RecordText;
import org.pipwright.engine.record.SgfText;

/** A match that nets play at a table of a desk, kept turn by turn; a browser's requests move it on. */
record DeskGame() implements Subject {
    private static final String RECORD = "\\d{4}-.*-[0-9]+\\.txt";

    @Override
    public String name() {
        return "desk";
    }

    @Override
    public boolean kept(Path folder) {
        return record(folder).isPresent();
    }

    /** The newest record of a table in which something was played. */
    static Optional<Path> record(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.getFileName().toString().matches(RECORD)
                            && file.toFile().length() > 0)
                    .max(Comparator.naturalOrder());
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    @Override
    public List<String> words(Path folder, boolean again) {
        return List.of(
                "desk", "--no-browser", "--net", DeskVisitor.NET, "--threads", "2", "--records", folder.toString());
    }

    @Override
    public Work start(Launcher launcher, Path folder, boolean again) throws IOException {
        Path out = Files.createTempFile(launcher.logs(), "out", "");
        Path err = Files.createTempFile(launcher.logs(), "err", "");
        return new Desk(launcher.process(words(folder, again), out, err), out, err, folder, again);
    }

    /** The record, but for the day; both files that are kept must hold it. */
    @Override
    public String bits(Path folder, Work done) throws IOException {
        Path file = record(folder).orElseThrow(() -> new IOException("no record"));
        String sgf = file.getFileName().toString().replaceAll("txt$", "sgf");
        try {
            GameRecord record = RecordText.parse(Files.readString(file));
            GameRecord same = SgfText.parse(Files.readString(folder.resolve(sgf)));
            return RecordText.print(record)
                            .lines()
                            .filter(line -> !line.startsWith("date:"))
                            .collect(Collectors.joining("\n"))
                    + record.games().equals(same.games());
        } catch (InvalidRecordException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    /** A desk is done when the match is over; it is then told to end. */
    private static final class Desk extends Work {
        private final DeskVisitor visitor;

        Desk(Process process, Path out, Path err, Path folder, boolean again) {
            super(process, out, err);
            visitor = new DeskVisitor(this, folder, again);
            Thread thread = new Thread(visitor, "visitor");
            thread.setDaemon(true);
            thread.start();
        }

        @Override
        String err() {
            return super.err() + visitor.failure();
        }

        @Override
        boolean done() {
            return !isAlive() && visitor.over();
        }
    }
}
