package org.pipwright.engine.play;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

class PlayTextTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "start|31|8/5 6/5|8/5 6/5",
                "start|31|6/5,8/5|8/5 6/5",
                "start|31|'6/5; 8 / 5'|8/5 6/5",
                "start|42|13/7|13/7",
                "start|42|13/9/7|13/7",
                "start|42|13/9 9/7|13/7",
                "start|42|9/7 13/9|13/7",
                "start|42|13/11 11/7|13/7",
                "start|33|13/10(2) 10/7 10/7|13/7(2)",
                "start|33|13/7 13/7|13/7(2)",
                "start|33|13/10/7 (2)|13/7(2)",
                "start|22|6/4(2) 13/11(2)|13/11(2) 6/4(2)",
                "start|33|13/10 13/4|13/4 13/10",
                "5@6 1@bar / 2@4 9@6 2@5|31|BAR/22 6/5|bar/22 6/5",
                "5@6 1@bar / 2@4 9@6 2@5|31|b/22 6/5|bar/22 6/5",
                "5@6 1@bar / 2@4 9@6 2@5|31|25/22, 6/5|bar/22 6/5",
                "5@6 1@bar / 1@3 9@6|31|bar/22 6/5|bar/22* 6/5",
                "5@6 1@bar / 1@3 9@6|31|bar/22*/21|bar/22*/21",
                "2@6 / 2@1|66|6/off(2)|6/off(2)",
                "2@6 / 2@1|66|6/0 6/OFF|6/off(2)",
                "2@6 / 2@1|66|6/o(2)|6/off(2)",
                "1@6 / 2@1|62|6/off|6/off",
                "1@6 / 2@1|62|6/4/off|6/off",
                "5@6 1@bar / 2@1 2@2 2@3 2@4 2@5 2@6|31|No Play|no play",
                "5@6 1@bar / 2@1 2@2 2@3 2@4 2@5 2@6|31|dance|no play",
            })
    void whatPeopleWriteIsReadAndPrintedInOneForm(String position, String roll, String text, String canonical) {
        Position before = PositionText.parse(position);
        assertEquals(canonical, PlayText.parse(text, before, Roll.parse(roll)).toString());
    }

    /** Opponent's blots on the mover's points 10, 11 and 8 are on points 15, 14 and 17 of its own. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "3@13 / 1@15 9@6|32|13/10/8|13/10*/8",
                "3@13 / 1@15 9@6|32|13/10*/8|13/10*/8",
                "3@13 / 1@15 9@6|32|13/8|13/8",
                "3@13 / 1@15 9@6|32|13/11/8|13/8",
                "3@13 / 1@15 9@6|32|13/10 13/11|13/10* 13/11",
                "3@13 / 1@15 1@14 9@6|32|13/11/8|13/11*/8",
                "3@13 / 1@15 1@14 9@6|32|13/10*/8|13/10*/8",
                "3@13 / 1@17 9@6|32|13/8|13/8*",
                "3@13 / 1@15 1@17 9@6|32|13/8|13/8*",
                "3@13 / 1@15 1@17 9@6|32|13/8*|13/8*",
                "3@13 / 1@15 1@17 9@6|32|13/10*/8|13/10*/8*",
                "3@13 / 1@15 2@14 9@6|32|13/8|13/10*/8",
                "3@13 / 1@15 9@6|33|13/7(2)|13/10*/7(2)",
                "3@13 / 1@15 9@6|33|13/10*(3) 10/7|13/10*/7 13/10(2)",
                "3@13 1@16 / 1@15 9@6|33|16/13/10*/7 13/10|16/10*/7 13/10",
            })
    void hitsAreFoundWithOrWithoutStars(String position, String roll, String text, String canonical) {
        Position before = PositionText.parse(position);
        assertEquals(canonical, PlayText.parse(text, before, Roll.parse(roll)).toString());
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 7, 15})
    void everyPlayIsReadBackHoweverItIsWritten(int checkers) {
        RandomWalk walk = new RandomWalk(checkers, 61);
        Random random = new Random(62);
        for (int i = 0; i < 600; i++) {
            Position position = walk.next();
            Roll roll = walk.roll();
            for (Play play : Plays.legal(position, roll)) {
                String canonical = play.toString();
                for (String text : List.of(canonical, shuffled(canonical, random), stepByStep(play, random))) {
                    Play read = PlayText.parse(text, position, roll);
                    assertEquals(play, read, () -> position + " " + roll + ": " + text);
                    assertEquals(canonical, read.toString());
                }
            }
        }
    }

    /** The canonical groups in any order, the stars left out at random, bar and off by their other names. */
    private static String shuffled(String canonical, Random random) {
        if (canonical.equals(PlayPrinter.NO_PLAY)) {
            return "NONE";
        }
        List<String> groups = new ArrayList<>(Arrays.asList(canonical.split(" ")));
        Collections.shuffle(groups, random);
        String text = String.join(random.nextBoolean() ? "," : "  ", groups);
        text = random.nextBoolean() ? text.replace("*", "") : text;
        text = random.nextBoolean() ? text.replace("bar", "B") : text.replace("bar", "25");
        return random.nextBoolean() ? text.replace("off", "0") : text.toUpperCase();
    }

    /** Every step by itself in any order, with or without its star. */
    private static String stepByStep(Play play, Random random) {
        if (play.steps().isEmpty()) {
            return " no  play ";
        }
        List<Step> steps = new ArrayList<>(play.steps());
        Collections.shuffle(steps, random);
        boolean stars = random.nextBoolean();
        return steps.stream()
                .map(step -> step.from() + "/" + step.to() + (stars && step.hit() ? "*" : ""))
                .collect(Collectors.joining(" "));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 7, 15})
    void jsonIsReadBack(int checkers) {
        RandomWalk walk = new RandomWalk(checkers, 63);
        for (int i = 0; i < 300; i++) {
            Position position = walk.next();
            Roll roll = walk.roll();
            for (Play play : Plays.legal(position, roll)) {
                assertEquals(play, PlayJson.parse(PlayJson.print(play), position, roll));
            }
        }
    }

    @Test
    void jsonHasOneForm() {
        Play play = PlayText.parse("8/5 6/5", Position.start(), Roll.of(3, 1));
        assertEquals(
                "{\"steps\":[{\"from\":8,\"to\":5,\"hit\":false},{\"from\":6,\"to\":5,\"hit\":false}]}",
                PlayJson.print(play));
        assertEquals(
                play,
                PlayJson.parse(
                        "{\"steps\":[{\"from\":6,\"to\":5},{\"to\":5,\"from\":8}]}", Position.start(), Roll.of(3, 1)));
    }

    /** Plays within a larger document, one after the other. */
    @Test
    void jsonOfSeveralPlaysStandsInAList() throws IOException {
        Play play = PlayText.parse("8/5 6/5", Position.start(), Roll.of(3, 1));
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.writeStartArray();
            PlayJson.write(json, play);
            PlayJson.write(json, play);
            json.writeEndArray();
        }
        assertEquals("[" + PlayJson.print(play) + "," + PlayJson.print(play) + "]", text.toString());
    }

    /** 200 characters are a play, one more is none. */
    @Test
    void blanksCountTowardsTheLongestText() {
        Position start = Position.start();
        Roll roll = Roll.of(3, 1);
        String longest = "8/5" + " ".repeat(194) + "6/5";
        assertEquals("8/5 6/5", PlayText.parse(longest, start, roll).toString());
        assertThrows(IllegalPlayException.class, () -> PlayText.parse(longest + " ", start, roll));
    }
}
