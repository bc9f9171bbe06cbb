package org.pipwright.models;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.PlayRanker;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

/** A process that prints what shipped nets say of some positions, one number a line. */
final class PrintedChances {
    private static final List<String> ROLLS = List.of("3-1", "6-6", "6-5", "2-1");

    private PrintedChances() {}

    public static void main(String[] args) {
        numbers().forEach(System.out::println);
    }

    /** Chances of the canaries and of what first plays lead to, and the equities of those plays, judged as siblings. */
    static List<Double> numbers() {
        List<Double> numbers = new ArrayList<>();
        for (String name : ModelCatalog.shipped().names()) {
            NetworkEvaluator net = new NetworkEvaluator(ModelCatalog.shipped().load(name));
            PlayRanker ranker = new PlayRanker(net);
            Canary.ALL.forEach(canary -> add(numbers, net.evaluate(PositionText.parse(canary.position()))));
            for (String roll : ROLLS) {
                for (Play play : Plays.legal(Position.start(), Roll.parse(roll))) {
                    add(numbers, net.evaluate(play.next()));
                }
                ranker.rank(Position.start(), Roll.parse(roll)).stream()
                        .sorted((a, b) -> a.play().toString().compareTo(b.play().toString()))
                        .forEach(verdict -> add(numbers, verdict.outcomes()));
            }
        }
        return numbers;
    }

    private static void add(List<Double> numbers, Outcomes outcomes) {
        numbers.add(outcomes.winSingle());
        numbers.add(outcomes.winGammon());
        numbers.add(outcomes.winBackgammon());
        numbers.add(outcomes.loseSingle());
        numbers.add(outcomes.loseGammon());
        numbers.add(outcomes.loseBackgammon());
    }
}
