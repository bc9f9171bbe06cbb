package org.pipwright.cli.desk;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.pipwright.engine.record.Heading;
import org.pipwright.engine.record.OpenRecord;
import org.pipwright.engine.record.Rules;

/** Lays a table as a form asks for it. */
final class TableForm {
    private static final int MAX_LENGTH = 25;

    private final DeskSetup setup;
    private final Judges judges;

    TableForm(DeskSetup setup, Judges judges) {
        this.setup = setup;
        this.judges = judges;
    }

    /**
     * A table for a form.
     *
     * @param field gives the text of a field, or null
     * @param number the number it will have
     * @return the table
     * @throws IllegalArgumentException if a field cannot be used; its message says which and why
     */
    PlayTable table(UnaryOperator<String> field, int number) {
        List<Seat> seats =
                IntStream.range(0, 2).mapToObj(side -> seat(field, side)).toList();
        int length = number(field, "length", 0, MAX_LENGTH);
        Rules rules = new Rules(
                length, length == 0 && field.apply("jacoby") != null, length == 0 && field.apply("beavers") != null);
        String seed = field.apply("seed");
        long dice = seed == null || seed.isBlank()
                ? new SplittableRandom().nextLong(1_000_000_000)
                : number(field, "seed", 0, 999_999_999);
        Heading heading = new Heading(
                seats.stream().map(Seat::name).toList(),
                rules,
                Map.of("date", LocalDate.now().toString()),
                List.of("Dice by seed " + dice + "." + players(seats)));
        String name = LocalDateTime.now().format(DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmmss")) + "-" + number;
        return new PlayTable(OpenRecord.of(heading), seats, dice, new RecordKeeper(setup.folder(), name));
    }

    private static String players(List<Seat> seats) {
        StringBuilder text = new StringBuilder();
        seats.forEach(seat -> seat.net().ifPresent(judge -> text.append(' ')
                .append(seat.name())
                .append(" is a net, lookahead ")
                .append(judge.effort().lookahead())
                .append('.')));
        return text.toString();
    }

    private Seat seat(UnaryOperator<String> field, int side) {
        String who = field.apply("who" + side);
        String name = field.apply("name" + side);
        boolean person = who == null || who.isEmpty();
        if (!person && !setup.nets().contains(who)) {
            throw new IllegalArgumentException("there is no net of that name at this desk");
        }
        String called = name == null || name.isBlank() ? (person ? "Player " + (side + 1) : who) : name.strip();
        return person
                ? Seat.person(called)
                : Seat.net(called, judges.of(who, number(field, "lookahead" + side, 0, DeskSetup.MAX_LOOKAHEAD)));
    }

    private static int number(UnaryOperator<String> field, String name, int least, int most) {
        String text = field.apply(name);
        if (text == null
                || !text.matches("[0-9]{1,9}")
                || Integer.parseInt(text) < least
                || Integer.parseInt(text) > most) {
            throw new IllegalArgumentException(
                    name.replaceAll("[0-9]", "") + " is to be a whole number from " + least + " to " + most);
        }
        return Integer.parseInt(text);
    }
}
