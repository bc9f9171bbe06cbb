package org.pipwright.cli.desk;

import java.util.List;
import java.util.Optional;
import org.pipwright.cli.drill.BoardWords;
import org.pipwright.cli.picture.BoardPicture;
import org.pipwright.cli.picture.Drawing;
import org.pipwright.cli.picture.Scene;
import org.pipwright.cli.picture.SvgText;
import org.pipwright.cli.picture.Theme;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.MatchStakes;
import org.pipwright.engine.play.PlayText;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.record.Entry;
import org.pipwright.engine.record.Game;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.record.RecordText;
import org.pipwright.engine.record.Stand;
import org.pipwright.engine.roll.Roll;

/**
 * A table as a page shows it.
 *
 * @param number its number
 * @param names the two sides
 * @param score points of the two sides in games before this one
 * @param game number of the game
 * @param board the board as an SVG element
 * @param words the board in words
 * @param last what happened last; may be empty
 * @param next what has to happen now
 * @param error why the last request was refused; may be empty
 * @param plays the legal plays of the dice on the table; none if there are no dice or a net plays them
 * @param mayThrow whether a person may throw the dice
 * @param mayDouble whether a person may double
 * @param mayAnswer whether a person has to answer a double
 * @param mayBeaver whether it may beaver
 * @param mayResign whether a person may give the game up
 * @param netToAct whether a net has to act
 * @param over whether the game has ended
 * @param matchOver whether the match has ended with it
 * @param mayAsk whether there is something to ask about
 * @param lines the game so far, as the record has it
 */
public record TableView(
        int number,
        List<String> names,
        List<Integer> score,
        int game,
        String board,
        String words,
        String last,
        String next,
        String error,
        List<String> plays,
        boolean mayThrow,
        boolean mayDouble,
        boolean mayAnswer,
        boolean mayBeaver,
        boolean mayResign,
        boolean netToAct,
        boolean over,
        boolean matchOver,
        boolean mayAsk,
        List<String> lines) {
    /**
     * What has happened and what has to happen now, for those who hear it.
     *
     * @return sentences
     */
    public String said() {
        String happened = error.isEmpty() ? last : error;
        return (happened.isEmpty() ? "" : happened + ". ") + next;
    }

    static TableView of(int number, PlayTable table, String error) {
        synchronized (table) {
            return made(number, table, error);
        }
    }

    private static TableView made(int number, PlayTable table, String error) {
        Stand stand = table.stand();
        GameRecord record = table.record();
        boolean net = table.netToAct();
        boolean person = !net && !stand.over();
        boolean thrown = table.roll().isPresent();
        Scene scene = scene(table, stand, record);
        List<String> lines = lines(record);
        return new TableView(
                number,
                record.heading().players(),
                List.of(won(record, 0, stand), won(record, 1, stand)),
                stand.number(),
                picture(scene, theme(table)),
                BoardWords.of(scene),
                lines.isEmpty() ? "" : lines.get(lines.size() - 1),
                next(table, stand, record),
                error,
                person ? table.roll().map(roll -> plays(stand, roll)).orElse(List.of()) : List.of(),
                person && stand.mayRoll() && !thrown,
                person && stand.mayDouble() && !thrown,
                person && stand.offered(),
                person && stand.actions().contains(CubeAction.BEAVER),
                person && stand.begun() && !stand.offered(),
                net,
                stand.over(),
                stand.last(),
                table.decision(),
                lines);
    }

    private static List<String> plays(Stand stand, Roll roll) {
        return Plays.legal(stand.position(), roll).stream()
                .map(PlayText::print)
                .sorted()
                .toList();
    }

    private static int won(GameRecord record, int side, Stand stand) {
        return record.games().subList(0, stand.number() - 1).stream()
                .mapToInt(game -> Math.max(0, side == 0 ? game.points() : -game.points()))
                .sum();
    }

    /** What the record has of the last game. */
    private static List<String> lines(GameRecord record) {
        List<String> all = RecordText.print(record).lines().toList();
        int from = all.size();
        while (from > 0 && !all.get(from - 1).startsWith("game ")) {
            from--;
        }
        return all.subList(from, all.size());
    }

    private static String next(PlayTable table, Stand stand, GameRecord record) {
        if (stand.over()) {
            String winner = record.heading().name(stand.points() > 0 ? 0 : 1);
            int points = Math.abs(stand.points());
            return winner + " wins " + points + (points == 1 ? " point" : " points")
                    + (stand.last() ? " and the match." : ".");
        }
        String name = record.heading().name(table.side());
        if (stand.offered()) {
            return name + " to take or pass.";
        }
        if (table.roll().isPresent()) {
            return name + " to play " + table.roll().get() + ".";
        }
        return name + (stand.begun() ? " to roll" + (stand.mayDouble() ? " or double." : ".") : " to begin.");
    }

    /** From which side the board is seen: a person's who plays a net, else that of the side that acts. */
    private static int viewer(PlayTable table) {
        boolean first = table.seat(0).net().isEmpty();
        boolean second = table.seat(1).net().isEmpty();
        return first == second ? table.side() : first ? 0 : 1;
    }

    private static int onRoll(PlayTable table, Stand stand) {
        return stand.begun() ? stand.onRoll() : table.side();
    }

    private static Theme theme(PlayTable table) {
        return viewer(table) == 0 ? Theme.LIGHT : Theme.LIGHT.swapped();
    }

    private static Scene scene(PlayTable table, Stand stand, GameRecord record) {
        boolean mine = viewer(table) == onRoll(table, stand);
        Scene scene = Scene.of(mine ? stand.position() : stand.position().swapped())
                .with(mine ? stand.cube() : stand.cube().swapped());
        if (stand.stakes() instanceof MatchStakes) {
            var score = ((MatchStakes) stand.stakes()).score();
            boolean seen = stand.begun() ? mine : viewer(table) == 0;
            scene = scene.with(seen ? score : score.swapped());
        }
        if (!mine) {
            return scene.waiting();
        }
        Optional<Entry.Turn> ending = ending(stand, record);
        if (ending.isPresent()) {
            return scene.with(ending.get().roll(), ending.get().play());
        }
        return table.roll().isPresent() ? scene.with(table.roll().get(), null) : scene;
    }

    /** The last turn of a game that it has ended. */
    private static Optional<Entry.Turn> ending(Stand stand, GameRecord record) {
        Game game = record.games().get(stand.number() - 1);
        if (!stand.over() || !(game.entries().get(game.entries().size() - 1) instanceof Entry.Turn)) {
            return Optional.empty();
        }
        return Optional.of((Entry.Turn) game.entries().get(game.entries().size() - 1));
    }

    private static String picture(Scene scene, Theme theme) {
        Drawing plain = BoardPicture.of(scene, theme);
        return SvgText.of(
                new Drawing(plain.width(), plain.height(), plain.paper(), BoardWords.of(scene), plain.shapes()));
    }
}
