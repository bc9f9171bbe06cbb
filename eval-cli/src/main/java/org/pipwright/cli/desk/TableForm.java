package org.pipwright.cli.desk;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
        List<Optional<Sitting.Chair>> chairs =
                IntStream.range(0, 2).mapToObj(side -> chair(field, side)).toList();
        List<String> names = IntStream.range(0, 2)
                .mapToObj(side -> name(field, side, chairs.get(side)))
                .toList();
        int length = number(field, "length", 0, MAX_LENGTH);
        Rules rules = new Rules(
                length, length == 0 && field.apply("jacoby") != null, length == 0 && field.apply("beavers") != null);
        String seed = field.apply("seed");
        long dice = seed == null || seed.isBlank()
                ? new SplittableRandom().nextLong(1_000_000_000)
                : number(field, "seed", 0, 999_999_999);
        Sitting sitting = new Sitting(dice, chairs);
        Heading heading =
                new Heading(names, rules, Map.of("date", LocalDate.now().toString()), List.of(sitting.remark(names)));
        return new PlayTable(
                OpenRecord.of(heading), sitting.seats(names, judges), dice, KeptGames.begun(setup.folder(), number));
    }

    private static String name(UnaryOperator<String> field, int side, Optional<Sitting.Chair> chair) {
        String name = field.apply("name" + side);
        return name == null || name.isBlank()
                ? chair.map(Sitting.Chair::net).orElse("Player " + (side + 1))
                : name.strip();
    }

    private Optional<Sitting.Chair> chair(UnaryOperator<String> field, int side) {
        String who = field.apply("who" + side);
        if (who == null || who.isEmpty()) {
            return Optional.empty();
        }
        if (!setup.nets().contains(who)) {
            throw new IllegalArgumentException("there is no net of that name at this desk");
        }
        return Optional.of(new Sitting.Chair(who, number(field, "lookahead" + side, 0, DeskSetup.MAX_LOOKAHEAD)));
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
