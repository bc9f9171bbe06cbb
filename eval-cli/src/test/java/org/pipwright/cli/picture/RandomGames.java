package org.pipwright.cli.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** Turns of games in which every legal play is as likely as another: all kinds of positions come up. */
final class RandomGames {
    /** A position, a roll and a play of it. */
    record Turn(Position position, Roll roll, Play play) {}

    private RandomGames() {}

    /** All turns of some games. */
    static List<Turn> turns(int games, long seed) {
        Random random = new Random(seed);
        List<Turn> turns = new ArrayList<>();
        for (int i = 0; i < games; i++) {
            Position position = Position.start();
            while (!position.finished()) {
                Roll roll = Roll.of(1 + random.nextInt(6), 1 + random.nextInt(6));
                List<Play> plays = Plays.legal(position, roll);
                Play play = plays.get(random.nextInt(plays.size()));
                turns.add(new Turn(position, roll, play));
                position = play.next();
            }
        }
        return turns;
    }
}
