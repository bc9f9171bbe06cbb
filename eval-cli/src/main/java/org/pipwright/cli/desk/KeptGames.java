package org.pipwright.cli.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.IllegalEntryException;
import org.pipwright.engine.record.InvalidRecordException;
import org.pipwright.engine.record.OpenRecord;
import org.pipwright.engine.record.RecordText;
import org.pipwright.engine.record.Rules;

/**
 * What was played at the tables of earlier desks and has not ended: it can be gone on with, from the last turn that was
 * played. Only the newest records of the folder are looked at, once.
 */
final class KeptGames {
    private static final int MAX = 6;
    private static final long MAX_BYTES = 1 << 20;
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmmss");
    private static final Pattern FILE = Pattern.compile("([0-9]{4}-[0-9]{2}-[0-9]{2}-[0-9]{6}-[0-9]{1,4})\\.txt");

    private final DeskSetup setup;
    private final Judges judges;
    private List<Kept> all;

    /**
     * Something to go on with.
     *
     * @param name name of its record
     * @param words what it is
     * @param file its record as text
     */
    private record Kept(String name, String words, Path file) {}

    /** A record and who played it. */
    private record Found(OpenRecord open, Sitting sitting) {}

    KeptGames(DeskSetup setup, Judges judges) {
        this.setup = setup;
        this.judges = judges;
    }

    /** Keeps a new table's record. */
    static RecordKeeper begun(Path folder, int number) {
        return RecordKeeper.begun(folder, LocalDateTime.now().format(TIME) + "-", number);
    }

    /** Looks into the folder, so that the first page need not. */
    void look() {
        all();
    }

    /** What there is to go on with besides the tables of this desk, the newest first. */
    List<HomeView.Kept> besides(Tables tables) {
        List<Path> laid = tables.all().values().stream().map(PlayTable::file).toList();
        return all().stream()
                .filter(kept -> !laid.contains(kept.file()))
                .map(kept -> new HomeView.Kept(kept.name(), kept.words()))
                .toList();
    }

    private synchronized List<Kept> all() {
        if (all == null) {
            all = read();
        }
        return all;
    }

    private List<Kept> read() {
        try (Stream<Path> files = Files.list(setup.folder())) {
            return files.map(file -> FILE.matcher(file.getFileName().toString()))
                    .filter(Matcher::matches)
                    .map(file -> file.group(1))
                    .sorted(Comparator.reverseOrder())
                    .limit(MAX)
                    .map(this::kept)
                    .flatMap(Optional::stream)
                    .toList();
        } catch (IOException e) {
            // Games that cannot be gone on with keep nobody from beginning others.
            return List.of();
        }
    }

    private Optional<Kept> kept(String name) {
        return find(name)
                .map(found -> new Kept(name, words(name, found.open()), RecordKeeper.text(setup.folder(), name)));
    }

    private static String words(String name, OpenRecord open) {
        Rules rules = open.record().heading().rules();
        return String.join(" against ", open.record().heading().players())
                + (rules.match() ? ", match to " + rules.length() : ", money games") + ", game "
                + open.stand().number() + ", begun " + name.substring(0, 10) + " at " + name.substring(11, 13) + ":"
                + name.substring(13, 15);
    }

    /** A record that a table has left and that has not ended. */
    private Optional<Found> find(String name) {
        Path file = RecordKeeper.text(setup.folder(), name);
        try {
            if (Files.size(file) > MAX_BYTES) {
                return Optional.empty();
            }
            GameRecord record = RecordText.parse(Files.readString(file));
            OpenRecord open = OpenRecord.of(record);
            return open.stand().last()
                    ? Optional.empty()
                    : Sitting.of(record.heading(), setup.nets()).map(sitting -> new Found(open, sitting));
        } catch (IOException | InvalidRecordException | IllegalEntryException e) {
            return Optional.empty();
        }
    }

    /**
     * A table to go on at.
     *
     * @param name name of one of these records, or null
     * @throws IllegalArgumentException if there is no such record any more
     */
    PlayTable table(String name) {
        Found found = all().stream()
                .filter(kept -> kept.name().equals(name))
                .findFirst()
                .flatMap(kept -> find(kept.name()))
                .orElseThrow(() -> new IllegalArgumentException("no such game is there to go on with"));
        List<String> names = found.open().record().heading().players();
        return new PlayTable(
                found.open(),
                found.sitting().seats(names, judges),
                found.sitting().seed(),
                new RecordKeeper(setup.folder(), name));
    }
}
