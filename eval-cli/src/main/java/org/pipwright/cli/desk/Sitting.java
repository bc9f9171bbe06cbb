package org.pipwright.cli.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.pipwright.engine.record.Heading;

/**
 * Who plays at a table and by which dice. It is a remark of the table's record, so that the table can be laid again from
 * that. Immutable.
 *
 * @param seed seed of the dice
 * @param chairs what plays the two sides; empty for a person
 */
record Sitting(long seed, List<Optional<Chair>> chairs) {
    private static final Pattern SEED = Pattern.compile("Dice by seed ([0-9]{1,9})\\.");

    /**
     * A net at a table.
     *
     * @param net its name
     * @param lookahead how far it looks ahead
     */
    record Chair(String net, int lookahead) {}

    Sitting {
        chairs = List.copyOf(chairs);
    }

    /** The remark. */
    String remark(List<String> names) {
        StringBuilder text = new StringBuilder("Dice by seed " + seed + ".");
        for (int side = 0; side < 2; side++) {
            String name = names.get(side);
            chairs.get(side).ifPresent(chair -> text.append(' ')
                    .append(name)
                    .append(" is the net ")
                    .append(chair.net())
                    .append(", lookahead ")
                    .append(chair.lookahead())
                    .append('.'));
        }
        return text.toString();
    }

    /** What a record's remarks say; empty if none was written by a table at which such nets sat. */
    static Optional<Sitting> of(Heading heading, List<String> nets) {
        List<Optional<Chair>> chairs = chairs(nets);
        for (String remark : heading.remarks()) {
            Matcher seed = SEED.matcher(remark);
            if (seed.lookingAt()) {
                long dice = Long.parseLong(seed.group(1));
                return chairs.stream()
                        .flatMap(first -> chairs.stream().map(second -> new Sitting(dice, List.of(first, second))))
                        .filter(sitting -> sitting.remark(heading.players()).equals(remark))
                        .findFirst();
            }
        }
        return Optional.empty();
    }

    private static List<Optional<Chair>> chairs(List<String> nets) {
        List<Optional<Chair>> chairs = new ArrayList<>(List.of(Optional.empty()));
        for (String net : nets) {
            for (int lookahead = 0; lookahead <= DeskSetup.MAX_LOOKAHEAD; lookahead++) {
                chairs.add(Optional.of(new Chair(net, lookahead)));
            }
        }
        return chairs;
    }

    /** The seats; nets are loaded, if they have not been. */
    List<Seat> seats(List<String> names, Judges judges) {
        return IntStream.range(0, 2)
                .mapToObj(side -> chairs.get(side)
                        .map(chair -> Seat.net(names.get(side), judges.of(chair.net(), chair.lookahead())))
                        .orElseGet(() -> Seat.person(names.get(side))))
                .toList();
    }
}
