package org.pipwright.bench.strength;

import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import org.pipwright.engine.roll.Roll;

/** Chooses a play for a decision: the position it leads to, seen by the side that plays. */
@FunctionalInterface
public interface Chooser {
    Position choose(Position position, Roll roll);

    /** What a judge finds best, races left to its net. */
    static Chooser byJudge(Judge judge, Effort effort) {
        Effort plain = effort.withRaces(false);
        return (position, roll) ->
                judge.ask(Question.of(position, roll), plain).best().play().result();
    }

    /** What a player chooses; ties at random, always alike. */
    static Chooser byPlayer(Player player) {
        PlayGenerator generator = new PlayGenerator();
        Dice ties = Dice.ofGame(1, 1);
        return (position, roll) -> {
            int[] planes = position.toPlanes();
            generator.generate(planes, 0, roll.high(), roll.low());
            int chosen = player.choose(planes, 0, generator, ties);
            return Position.ofPlanes(generator.results(), chosen * Planes.STRIDE);
        };
    }
}
