package org.pipwright.bench.signature;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.pipwright.bench.BenchPositions;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** All plays of all rolls in some positions, ranked by the networks alone. */
final class AllPlays {
    /** Of each list of a thousand, every so many positions. */
    private static final int EVERY = 100;

    private final Judge judge;

    AllPlays(Model model) {
        judge = new Judge(Knowledge.of(model), 1);
    }

    /** The positions they are taken from. */
    static List<Position> positions() {
        return Stream.of(BenchPositions.netPlay(), BenchPositions.randomPlay())
                .flatMap(list -> IntStream.range(0, list.size() / EVERY).mapToObj(i -> list.get(i * EVERY)))
                .collect(Collectors.toList());
    }

    /** One line a play of one position and roll, best first. */
    List<String> lines(Position position, Roll roll) {
        return judge.ask(Question.of(position, roll), Effort.STATIC).plays().stream()
                .map(ranked -> position + " " + roll + " " + ranked.play() + " " + rounded(ranked))
                .collect(Collectors.toList());
    }

    private static String rounded(PlayVerdict ranked) {
        return String.format(Locale.ROOT, "%.4f", ranked.equity());
    }

    /** All of them. */
    List<String> lines() {
        return positions().stream()
                .flatMap(position -> Roll.all().stream().flatMap(roll -> lines(position, roll).stream()))
                .collect(Collectors.toList());
    }
}
