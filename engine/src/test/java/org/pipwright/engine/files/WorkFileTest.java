package org.pipwright.engine.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which lines are whose; damage and forgery are tested with the files of rollouts and reviews. */
@Tag("fast")
class WorkFileTest {
    private static final WorkFile.Kind KIND = new WorkFile.Kind("sum", "some-sum 3", "sum ", 1000);
    private static final List<String> JUDGE = List.of("net a");
    private static final List<String> TASK = List.of("seed 1", "to 10");

    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("some.sum");
    }

    private String refusal(WorkFile.Kind kind, List<String> judge, List<String> task) {
        WorkFile other = kind.resumed(file(), judge);
        return assertThrows(InvalidWorkFileException.class, () -> other.read(task))
                .getMessage()
                .replace(folder + "/", "");
    }

    @Test
    void whatWasFoundIsReadBackByWhoAsksForTheSame() {
        List<String> found = List.of("sum 7", "sum 8", "and more");
        KIND.fresh(file(), JUDGE).begin(TASK, () -> found);
        assertEquals(Optional.of(found), KIND.resumed(file(), JUDGE).read(TASK));
        assertEquals(Optional.empty(), KIND.fresh(file(), JUDGE).read(TASK), "it begins anew");
        String other = "'some.sum' belongs to another sum: it has ";
        String mend = " is asked for; ask for the same, or begin anew with --save";
        assertEquals(other + "'net a' where 'net b'" + mend, refusal(KIND, List.of("net b"), TASK));
        assertEquals(other + "'to 10' where 'nothing more'" + mend, refusal(KIND, JUDGE, List.of("seed 1")));
        assertEquals(
                other + "'nothing more' where 'by 2'" + mend, refusal(KIND, JUDGE, List.of("seed 1", "to 10", "by 2")));
        assertEquals(
                "'some.sum' is not a whole sum file (it does not begin with 'some-sum 4'): use another copy, or begin anew"
                        + " with --save",
                refusal(new WorkFile.Kind("sum", "some-sum 4", "sum ", 1000), JUDGE, TASK));
        assertEquals(
                "'some.sum' is not a whole sum file (it is too large): use another copy, or begin anew with --save",
                refusal(new WorkFile.Kind("sum", "some-sum 3", "sum ", 10), JUDGE, TASK));
    }

    /** Both what the work is about and what was found. */
    @Test
    void filesOfAnOlderFormAreReadInThePresentOne() {
        KIND.fresh(file(), JUDGE).begin(TASK, () -> List.of("sum 7", "sum 8"));
        List<String> task = List.of("dice 1", "to 10");
        WorkFile.Kind next = new WorkFile.Kind("sum", "some-sum 4", "sum ", 1000)
                .reading("some-sum 3", line -> line.replace("seed", "dice").replaceFirst("^sum .*", "$0.0"));
        assertEquals(
                Optional.of(List.of("sum 7.0", "sum 8.0")),
                next.resumed(file(), JUDGE).read(task));
        next.fresh(file(), JUDGE).begin(task, () -> List.of("sum 7.5"));
        assertEquals(
                Optional.of(List.of("sum 7.5")), next.resumed(file(), JUDGE).read(task));
    }

    /** The largest size is one that a file may have. */
    @Test
    void aFileIsReadUpToItsLargestSize() throws IOException {
        KIND.fresh(file(), JUDGE).begin(TASK, () -> List.of("sum 7"));
        long size = Files.size(file());
        WorkFile.Kind just = new WorkFile.Kind("sum", "some-sum 3", "sum ", size);
        assertEquals(Optional.of(List.of("sum 7")), just.resumed(file(), JUDGE).read(TASK));
        assertEquals(
                "'some.sum' is not a whole sum file (it is too large): use another copy, or begin anew with --save",
                refusal(new WorkFile.Kind("sum", "some-sum 3", "sum ", size - 1), JUDGE, TASK));
    }

    @Test
    void aLineThatWasChangedIsTold() throws IOException {
        KIND.fresh(file(), JUDGE).begin(TASK, () -> List.of("sum 7"));
        Files.writeString(file(), Files.readString(file()).replace("sum 7", "sum 8"));
        assertEquals(
                "'some.sum' is not a whole sum file (its checksum is wrong): use another copy, or begin anew with --save",
                refusal(KIND, JUDGE, TASK));
    }

    @Test
    void nothingFoundIsReadBackAsNothing() {
        KIND.fresh(file(), JUDGE).begin(TASK, List::of);
        assertEquals(Optional.of(List.of()), KIND.resumed(file(), JUDGE).read(TASK));
    }

    /** As a disk that fills and is emptied again: the work goes on, one is told once, and in the end the file is whole. */
    @Test
    void workGoesOnWhileTheFileCannotBeWritten() throws IOException {
        Path gone = Files.createDirectory(folder.resolve("gone"));
        Path file = gone.resolve("some.sum");
        List<String> told = new ArrayList<>();
        WorkFile kept = KIND.fresh(file, JUDGE).warning(told::add);
        kept.begin(TASK, () -> List.of("sum 1"));
        kept.keepNow(TASK, () -> List.of("sum 1"));
        assertEquals(List.of(), told);
        Files.delete(file);
        Files.delete(gone);
        kept.keepNow(TASK, () -> List.of("sum 2"));
        String problem = "cannot write '" + file + "' (no such file, " + gone + ")";
        assertEquals(List.of(problem + ": going on, and trying again"), told);
        kept.keepNow(TASK, () -> List.of("sum 3"));
        assertEquals(Optional.of(problem), kept.problem());
        assertEquals(1, told.size(), "once");
        Files.createDirectory(gone);
        kept.end(TASK, () -> List.of("sum 4"));
        assertEquals(Optional.empty(), kept.problem());
        assertEquals(Optional.of(List.of("sum 4")), KIND.resumed(file, JUDGE).read(TASK));
        Files.delete(file);
        Files.delete(gone);
        kept.end(TASK, () -> List.of("sum 5"));
        assertEquals(Optional.of(problem), kept.problem());
        assertEquals(1, told.size(), "at the end the problem says it");
    }

    @Test
    void aFileThatCannotBeWrittenAtTheBeginningIsNamed() {
        Path file = folder.resolve("none").resolve("some.sum");
        UncheckedIOException thrown = assertThrows(
                UncheckedIOException.class, () -> KIND.fresh(file, JUDGE).begin(TASK, List::of));
        assertEquals(file.toString(), ((FileSystemException) thrown.getCause()).getFile());
    }

    /** Not each time something is found, and never where nothing is to be kept. */
    @Test
    void itIsNotWrittenMoreOftenThanNeeded() throws IOException {
        AtomicLong now = new AtomicLong(-5);
        WorkFile kept = KIND.fresh(file(), JUDGE).timedBy(now::get);
        kept.begin(TASK, () -> List.of("sum 1"));
        now.addAndGet(WorkFile.INTERVAL);
        kept.keep(TASK, () -> List.of("sum 2"));
        assertEquals(Optional.of(List.of("sum 1")), KIND.resumed(file(), JUDGE).read(TASK));
        now.addAndGet(1);
        kept.keep(TASK, () -> List.of("sum 3"));
        assertEquals(Optional.of(List.of("sum 3")), KIND.resumed(file(), JUDGE).read(TASK));
        now.addAndGet(1);
        kept.keep(TASK, () -> List.of("sum 4"));
        assertEquals(Optional.of(List.of("sum 3")), KIND.resumed(file(), JUDGE).read(TASK));
        Files.delete(file());
        WorkFile.NONE.begin(TASK, List::of);
        assertFalse(Files.exists(file()));
    }

    /** A rollout given the file of a review would write over it what no review can read. */
    @Test
    void isRefusedByOtherWork() {
        WorkFile.Kind other = new WorkFile.Kind("mean", "some-mean 1", "mean ", 1000);
        WorkFile kept = KIND.fresh(file(), JUDGE);
        kept.require(KIND);
        WorkFile.NONE.require(other);
        assertEquals(
                "a file of a sum, not of a mean",
                assertThrows(IllegalArgumentException.class, () -> kept.require(other))
                        .getMessage());
    }
}
