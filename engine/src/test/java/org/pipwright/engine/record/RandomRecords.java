package org.pipwright.engine.record;

import java.util.List;
import java.util.Map;
import java.util.Random;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rules.GameResult;

/** Records of games played at random, with doubles, resignations and remarks; keeps accounts of its own. */
public final class RandomRecords {
    private static final String[] NOTES = {"", "", "", "well played", "a \u201cquote\u201d, 50 % \\ ] : # x"};
    private static final GameResult[] RESULTS = GameResult.values();

    private final Random random;
    private RecordBuilder builder;
    private int cube;
    private int owner;
    private int onRoll;
    private boolean begun;

    final int[] points = new int[2];
    int doubles;
    int resignations;
    int passes;

    /** Records from a seed. */
    public RandomRecords(long seed) {
        random = new Random(seed);
    }

    private String note() {
        return NOTES[random.nextInt(NOTES.length)];
    }

    /** The next record. */
    public GameRecord next() {
        points[0] = 0;
        points[1] = 0;
        int length = random.nextInt(4) == 0 ? 0 : 1 + random.nextInt(7);
        boolean money = length == 0;
        Rules rules = new Rules(length, money && random.nextBoolean(), money && random.nextBoolean());
        Map<String, String> details =
                random.nextBoolean() ? Map.of() : Map.of("event", "Evening class", "date", "2026-03-04");
        Heading heading = new Heading(
                List.of("Ada", "Ben L."), rules, details, random.nextBoolean() ? List.of() : List.of("first", "", "x"));
        builder = new RecordBuilder(heading);
        int games = money ? 1 + random.nextInt(3) : 99;
        while (games-- > 0 && (money || Math.max(points[0], points[1]) < length)) {
            game(rules);
        }
        return builder.build();
    }

    private void game(Rules rules) {
        builder.game();
        cube = 1;
        owner = -1;
        begun = false;
        onRoll = random.nextInt(2);
        while (!builder.referee().over()) {
            if (random.nextInt(20) == 0) {
                builder.add(new Entry.Remark(note()));
            }
            if (begun && random.nextInt(150) == 0) {
                resign(rules);
            } else if (begun
                    && random.nextInt(15) == 0
                    && builder.referee().expected().endsWith("double")) {
                offer(rules);
            } else {
                turn(rules);
            }
        }
    }

    private void resign(Rules rules) {
        GameResult result = RESULTS[random.nextInt(3)];
        int side = random.nextInt(2);
        builder.add(new Entry.Resignation(side, result, note()));
        win(1 - side, result, rules);
        resignations++;
    }

    private void win(int side, GameResult result, Rules rules) {
        points[side] += rules.jacoby() && owner < 0 ? cube : cube * result.points();
    }

    private void offer(Rules rules) {
        doubles++;
        builder.add(new Entry.Cube(onRoll, CubeAction.DOUBLE, note()));
        int answer = random.nextInt(rules.beavers() && cube < 1 << 18 ? 3 : 2);
        if (answer == 0 && random.nextBoolean()) {
            builder.add(new Entry.Cube(1 - onRoll, CubeAction.PASS, note()));
            points[onRoll] += cube;
            passes++;
            return;
        }
        builder.add(new Entry.Cube(1 - onRoll, answer == 2 ? CubeAction.BEAVER : CubeAction.TAKE, note()));
        cube *= answer == 2 ? 4 : 2;
        owner = 1 - onRoll;
    }

    private void turn(Rules rules) {
        Roll roll = begun
                ? Roll.of(1 + random.nextInt(6), 1 + random.nextInt(6))
                : Roll.opening().get(random.nextInt(15));
        begun = true;
        List<Play> plays = Plays.legal(builder.referee().position(), roll);
        Play play = plays.get(random.nextInt(plays.size()));
        builder.add(new Entry.Turn(onRoll, roll, play, note()));
        if (play.result().finished()) {
            win(onRoll, GameResult.of(play.result()), rules);
        }
        onRoll = 1 - onRoll;
    }
}
