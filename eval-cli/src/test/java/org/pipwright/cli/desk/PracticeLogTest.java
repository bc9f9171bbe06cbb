package org.pipwright.cli.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.drill.Candidate;
import org.pipwright.engine.drill.DrillListener;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.Origin;
import org.pipwright.engine.drill.Selection;
import org.pipwright.engine.drill.SelectionSettings;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.network.RandomModel;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.score.MatchScore;

class PracticeLogTest {
    private static List<Exercise> exercises;

    @TempDir
    Path folder;

    private PracticeLog log;

    /** A play without the cube, a double for money, and an answer to a double at a match score. */
    @BeforeAll
    static void exercises() {
        Origin origin = new Origin.Listed("mine.txt", 1);
        MatchStakes match = new MatchStakes(new MatchScore(3, 5, false));
        List<Candidate> candidates = List.of(
                Candidate.asked(origin, Question.of(Position.start(), Roll.of(3, 1))),
                Candidate.asked(origin, Question.before(Position.start()).forMoney()),
                new Candidate(
                        origin,
                        Question.before(Position.start()).with(match, CubeState.START),
                        true,
                        Optional.empty(),
                        Optional.empty()));
        DrillListener nobody = (found, looked) -> {};
        exercises = new Selection(SelectionSettings.all(3, 0, false), Knowledge.of(RandomModel.of(5)), nobody)
                .run(candidates, 1);
    }

    @BeforeEach
    void begin() {
        log = new PracticeLog(folder.resolve("practice.log"));
    }

    private List<Question> wrong() throws IOException {
        return log.wrong().stream().map(Candidate::question).toList();
    }

    @Test
    void whatWasWrongLastIsAskedNextTime() throws IOException {
        assertEquals(List.of(), wrong(), "there is no log yet");
        for (Exercise exercise : exercises) {
            log.add(exercise, "some\u2026", false, -0.1);
        }
        List<Candidate> again = new PracticeLog(log.file()).wrong();
        assertEquals(3, again.size());
        for (int i = 0; i < 3; i++) {
            Question asked = again.get(i).question();
            assertEquals(exercises.get(i).position(), asked.position());
            assertEquals(exercises.get(i).stakes(), asked.stakes());
            assertEquals(exercises.get(i).cube(), asked.cube());
            assertEquals(i == 2, again.get(i).answering());
            assertEquals(new Origin.Listed("practice.log", i + 1), again.get(i).origin());
        }
        assertEquals(Roll.of(3, 1), again.get(0).question().roll());
        log.add(exercises.get(1), "roll", true, 0);
        assertEquals(2, wrong().size(), "right at last");
    }

    @Test
    void aLineIsPlain() throws IOException {
        log.add(exercises.get(0), "8/5 6/5", true, 0);
        String line = Files.readString(log.file());
        assertTrue(
                line.matches("[0-9-]{10}T[0-9:]{8}Z\tright\t/board\\?roll=3-1&for=points\t8/5 6/5\t0\\.0000\n"), line);
    }

    /** What a crash or another program leaves behind hides nothing and is kept. */
    @Test
    void tornLinesAreLeftAlone() throws IOException {
        log.add(exercises.get(0), "8/5 6/5", false, -0.2);
        byte[] torn = "2026-01-01T00:00:00Z\twrong\t/boa\u00e9".getBytes(StandardCharsets.ISO_8859_1);
        Files.write(log.file(), torn, StandardOpenOption.APPEND);
        log.add(exercises.get(1), "double", false, -0.2);
        assertEquals(2, wrong().size());
        String all = new String(Files.readAllBytes(log.file()), StandardCharsets.ISO_8859_1);
        assertEquals(3, all.split("\n").length, all);
        for (String odd : List.of(
                "x\twrong\t/board?position=1@99\ty\t0\n",
                "x\twrong\t/etc/passwd\ty\t0\n",
                "x\twrong\t/board?roll=3%-1\ty\t0\n",
                "\n",
                "x\twrong\t/board?\ty\t0\n")) {
            Files.writeString(log.file(), odd, StandardOpenOption.APPEND);
        }
        assertEquals(2, wrong().size(), "the start without dice was wrong before");
    }

    @Test
    void aLogThatCannotBeWrittenIsTold() {
        PracticeLog nowhere = new PracticeLog(folder.resolve("missing").resolve("practice.log"));
        assertThrows(IOException.class, () -> nowhere.add(exercises.get(0), "8/5 6/5", true, 0));
    }
}
