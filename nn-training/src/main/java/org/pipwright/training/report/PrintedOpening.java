package org.pipwright.training.report;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * What printed sources say of the first play with a roll; the resource {@value #TABLE} names them.
 *
 * @param roll the roll
 * @param best plays named best, about equal
 * @param close plays called close to them
 * @param undisputed whether no source disagrees
 */
public record PrintedOpening(Roll roll, List<Play> best, List<Play> close, boolean undisputed) {
    private static final String TABLE = "openings.tsv";

    /**
     * All of them.
     *
     * @return all 21 rolls, the fifteen that can open a game first
     */
    public static List<PrintedOpening> all() {
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(PrintedOpening.class.getResourceAsStream(TABLE), StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> of(line.split("\t")))
                    .collect(Collectors.toList());
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + TABLE + " from the class path", e);
        }
    }

    private static PrintedOpening of(String[] fields) {
        Roll roll = Roll.parse(fields[0]);
        return new PrintedOpening(roll, plays(fields[1], roll), plays(fields[2], roll), fields[3].equals("yes"));
    }

    private static List<Play> plays(String text, Roll roll) {
        return Arrays.stream(text.split(","))
                .filter(play -> !play.isBlank())
                .map(play -> PlayText.parse(play.strip(), Position.start(), roll))
                .collect(Collectors.toList());
    }

    /**
     * Whether sources name a play best.
     *
     * @param play a play of the roll from the start
     * @return true if one of those named leads to the same position
     */
    public boolean isBest(Play play) {
        return named(best, play);
    }

    /**
     * Whether sources name a play best or close to it.
     *
     * @param play a play of the roll from the start
     * @return true if one of those named leads to the same position
     */
    public boolean isAllowed(Play play) {
        return isBest(play) || named(close, play);
    }

    private static boolean named(List<Play> plays, Play play) {
        return plays.stream().anyMatch(named -> named.result().equals(play.result()));
    }
}
