package org.pipwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecordCommandTest {
    private static final String RECORD = "pipwright record 1\nplayers: Ada, Ben\nmatch: 3\n\n"
            + "game 1: 0-0\nAda 3-1: 8/5 6/5\nBen 6-2: 24/18 13/11  # runs\nAda doubles\nBen passes\n\n"
            + "game 2: 1-0\nBen 6-5: 24/13\n";

    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void write() throws IOException {
        file = Files.writeString(folder.resolve("evening.txt"), RECORD);
    }

    /** The documents show the same record. */
    @Test
    void theReadmesRecordIsThisOne() throws IOException {
        assertTrue(Example.documentation().contains("```\n" + RECORD + "```"));
    }

    @Test
    void checkSaysHowTheGamesEnded() {
        assertEquals(
                new Run(
                        0,
                        "Ada against Ben, match to 3\ngame 1: Ada wins 1 point\ngame 2: not finished\nscore: 1-0\n",
                        ""),
                Run.of("record", "check", file.toString()));
    }

    @Test
    void aMistakeIsToldWithItsPlaceAndTheLegalPlays() throws IOException {
        Files.writeString(
                file, RECORD.replace("6-5: 24/13", "6-6: 24/18(2) 8/2(2)").replace("Ada 3-1", "Ada 2-1"));
        Run run = Run.of("record", "check", file.toString());
        assertEquals(2, run.code());
        assertEquals("", run.out());
        assertTrue(
                run.err()
                        .startsWith(
                                "pipwright: " + file + ", line 6, column 10: 8/5 6/5 is 3 and 1 pips: the roll 2-1"),
                run.err());
        assertTrue(
                run.err().contains("expected a legal play of 2-1: ")
                        && run.err().contains("13/11 6/5"),
                run.err());
        List<String> mistakes = run.err().lines().toList();
        assertEquals(2, mistakes.size());
        assertTrue(mistakes.get(1).startsWith("pipwright: " + file + ", line 12, column 5: "), mistakes.get(1));
    }

    @Test
    void theBoardAtATurnIsShown() {
        Run run = Run.of("record", "board", file.toString(), "--game", "1", "--turn", "2");
        assertEquals(0, run.code());
        List<String> lines = run.out().lines().toList();
        assertEquals("game 1: Ben on roll", lines.get(0));
        assertEquals("5@6 3@8 5@13 2@24 / 2@5 4@6 2@8 5@13 2@24", lines.get(1));
        assertTrue(lines.contains("to play 6-2: 24/18 13/11"), run.out());
        assertTrue(run.out().contains("3 away against 3 away"), run.out());
    }

    @Test
    void withoutATurnTheEndIsShown() {
        List<String> end =
                Run.of("record", "board", file.toString()).out().lines().toList();
        assertEquals("game 2: Ada on roll", end.get(0));
        assertEquals("5@6 3@8 5@13 2@24 / 5@6 3@8 6@13 1@24", end.get(1));
        assertEquals(
                new Run(0, "game 1: Ada has won 1 point\n", ""),
                Run.of("record", "board", file.toString(), "--game", "1"));
    }

    @Test
    void atAMistakeTheBoardBeforeItIsShown() throws IOException {
        Files.writeString(file, RECORD.replace("24/18 13/11", "24/18 13/12"));
        Run run = Run.of("record", "board", file.toString());
        assertEquals(2, run.code());
        assertTrue(run.out().startsWith("game 1: Ben on roll\n5@6 3@8 5@13 2@24 / 2@5 4@6 2@8 5@13 2@24\n"), run.out());
        assertTrue(run.err().startsWith("pipwright: " + file + ", line 7, column 10: "), run.err());
    }

    @ParameterizedTest
    @CsvSource({
        "--game 3, --game is 3: '%s' has 1 to 2",
        "--game 1 --turn 3, --turn is 3: game 1 has 1 to 2",
        "--turn 0, --turn is 0: game 2 has 1 to 1"
    })
    void aTurnThatIsNotThereIsRefused(String options, String error) {
        Run run = Run.of(("record board " + file + " " + options).split(" "));
        assertEquals(new Run(2, "", "pipwright: " + error.formatted(file) + "\n"), run);
    }

    @Test
    void aNearNameIsSuggested() throws IOException {
        for (String slip : List.of("ada", "Aad", "Adda")) {
            Files.writeString(file, RECORD.replace("Ada 3-1", slip + " 3-1"));
            String err = Run.of("record", "check", file.toString()).err();
            assertTrue(err.contains("'" + slip + " 3-1: 8/5 6/5' (did you mean Ada?): expected a line"), err);
        }
        Files.writeString(file, RECORD.replace("Ada 3-1", "Zoe 3-1"));
        String err = Run.of("record", "check", file.toString()).err();
        assertTrue(err.contains("'Zoe 3-1: 8/5 6/5': expected a line"), err);
    }

    @Test
    void recordsGoToSgfAndBack() throws IOException {
        Path sgf = folder.resolve("evening.SGF");
        Path back = folder.resolve("back.txt");
        assertEquals(
                new Run(0, "wrote " + sgf + ": 2 games\n", ""),
                Run.of("record", "convert", file.toString(), sgf.toString()));
        assertTrue(Files.readString(sgf).startsWith("(;FF[4]GM[6]"));
        assertEquals(
                0, Run.of("record", "convert", sgf.toString(), back.toString()).code());
        assertEquals(RECORD, Files.readString(back));
    }

    @Test
    void nothingIsWrittenOverUnlessAskedFor() throws IOException {
        Path target = Files.writeString(folder.resolve("old.txt"), "precious");
        Run refused = Run.of("record", "convert", file.toString(), target.toString());
        assertEquals(new Run(2, "", "pipwright: '" + target + "' exists: --force replaces it\n"), refused);
        assertEquals("precious", Files.readString(target));
        assertEquals(
                0,
                Run.of("record", "convert", file.toString(), target.toString(), "--force")
                        .code());
        assertEquals(RECORD, Files.readString(target));
    }

    @Test
    void whatIsNoTextIsTold() throws IOException {
        Files.write(file, new byte[] {(byte) 0xff, (byte) 0xfe, 0});
        Run run = Run.of("record", "check", file.toString());
        assertEquals("pipwright: '" + file + "' is not text in UTF-8: save it as UTF-8\n", run.err());
    }

    @Test
    void aRecordWithoutGamesIsNoSgf() throws IOException {
        Files.writeString(file, "pipwright record 1\nplayers: Ada, Ben\nmoney: jacoby\n");
        assertEquals(
                "Ada against Ben, money play\nscore: 0-0\n",
                Run.of("record", "check", file.toString()).out());
        Run run = Run.of(
                "record", "convert", file.toString(), folder.resolve("x.sgf").toString());
        assertEquals("pipwright: the record has no game: an SGF file needs one\n", run.err());
    }
}
