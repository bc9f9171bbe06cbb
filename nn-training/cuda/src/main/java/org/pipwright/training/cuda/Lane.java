package org.pipwright.training.cuda;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.pipwright.engine.evaluation.Chances;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** Many games that take their turns together, and what they teach. */
final class Lane {
    private static final int TASK = 128;

    private final int games;
    private final GameRules rules;
    private final int[] planes;
    private final float[] values;
    private final Track[] tracks;
    private final int[] turns;
    private final boolean[] usual;
    private final boolean[] unknown;
    private final SplittableRandom[] randoms;
    private final FormulaSides formulas;
    private final LessonList[] lists;
    private final PlayGenerator generator = new PlayGenerator();
    private long finishedGames;
    private final long[] finishedByTask;

    Lane(int games, GameRules rules, long seed) {
        this.games = games;
        this.rules = rules;
        planes = new int[8 * games];
        values = new float[6 * games];
        tracks = new Track[games];
        turns = new int[games];
        usual = new boolean[games];
        unknown = new boolean[games];
        randoms = new SplittableRandom[games];
        formulas = new FormulaSides(games, rules);
        int tasks = (games + TASK - 1) / TASK;
        lists = new LessonList[tasks];
        finishedByTask = new long[tasks];
        SplittableRandom seeds = new SplittableRandom(seed);
        for (int i = 0; i < games; i++) {
            tracks[i] = new Track();
            randoms[i] = seeds.split();
            begin(i, generator);
        }
        for (int i = 0; i < tasks; i++) {
            lists[i] = new LessonList();
        }
    }

    int[] planes() {
        return planes;
    }

    long finishedGames() {
        return finishedGames;
    }

    private void begin(int game, PlayGenerator plays) {
        SplittableRandom random = randoms[game];
        tracks[game].clear();
        turns[game] = 0;
        unknown[game] = true;
        usual[game] = true;
        formulas.begin(game, random);
        System.arraycopy(Position.start().toPlanes(), 0, planes, 8 * game, 8);
        if (random.nextDouble() >= rules.randomStarts()) {
            return;
        }
        usual[game] = false;
        int[] now = Position.start().toPlanes();
        int count = 1 + random.nextInt(rules.maxRandomTurns());
        for (int t = 0; t < count; t++) {
            int roll = random.nextInt(36);
            int die = roll / 6 + 1;
            int other = roll % 6 + 1;
            int chosen = random.nextInt(plays.generate(now, 0, Math.max(die, other), Math.min(die, other)));
            Planes.copySwapped(plays.results(), 8 * chosen, now, 0);
        }
        System.arraycopy(now, 0, planes, 8 * game, 8);
    }

    /** Asks the deep network about positions it has not judged yet: those games begin with or formulas lead to. */
    void value(Accelerator accelerator) {
        int[] asked = IntStream.range(0, games).filter(i -> unknown[i]).toArray();
        int[] positions = new int[8 * asked.length];
        float[] chances = new float[6 * asked.length];
        for (int i = 0; i < asked.length; i++) {
            System.arraycopy(planes, 8 * asked[i], positions, 8 * i, 8);
        }
        accelerator.ask(Recipe.DEEP, positions, asked.length, chances);
        for (int i = 0; i < asked.length; i++) {
            System.arraycopy(chances, 6 * i, values, 6 * asked[i], 6);
            unknown[asked[i]] = false;
        }
    }

    /** Throws the dice of every game. */
    void throwDice(PlaysBatch batch) {
        for (int i = 0; i < games; i++) {
            Roll roll;
            do {
                int both = randoms[i].nextInt(36);
                roll = Roll.of(both / 6 + 1, both % 6 + 1);
            } while (turns[i] == 0 && usual[i] && roll.isDouble());
            batch.rolls.putInt(4 * i, roll.index());
        }
    }

    /** Makes every game's play and gives the lessons that are complete. */
    void advance(PlaysBatch batch, float lambda, LessonList out) {
        Threads.each(lists.length, task -> {
            LessonList list = lists[task];
            list.clear();
            finishedByTask[task] = 0;
            float[] lookahead = new float[6];
            float[] chances = new float[6 * PlaysBatch.SLOTS];
            PlayGenerator plays = new PlayGenerator();
            FormulaSides.Players players = new FormulaSides.Players();
            for (int i = task * TASK; i < Math.min(games, (task + 1) * TASK); i++) {
                // Without answers a game stands still for a turn and throws again.
                if (!batch.leftOut(i)) {
                    advance(i, batch, lambda, lookahead, chances, list, plays, players, task);
                }
            }
        });
        for (int task = 0; task < lists.length; task++) {
            out.addAll(lists[task]);
            finishedGames += finishedByTask[task];
        }
    }

    private void advance(
            int game,
            PlaysBatch batch,
            float lambda,
            float[] lookahead,
            float[] chances,
            LessonList list,
            PlayGenerator plays,
            FormulaSides.Players players,
            int task) {
        batch.expected(game, lookahead, 0);
        int kept = batch.kept(game);
        int best = 0;
        for (int k = 0; k < kept; k++) {
            batch.chances(game, k, chances, 6 * k);
            if (Chances.equity(chances, 6 * k) > Chances.equity(chances, 6 * best)) {
                best = k;
            }
        }
        boolean formula = formulas.plays(game, turns[game]);
        int chosen = formula ? best : choose(game, kept, best, chances);
        Track track = tracks[game];
        // A formula's play may be the best one; that it is taken for another only shortens what is learned from it.
        track.add(planes, 8 * game, values, 6 * game, lookahead, 0, formula || chosen != best);
        if (formula) {
            playFormula(game, batch.roll(game), plays, players);
        } else {
            batch.result(game, chosen, planes, 8 * game);
        }
        turns[game]++;
        boolean over = (Planes.occupied(planes, 8 * game) & Planes.ON_BOARD) == 0;
        if (over || turns[game] >= rules.maxTurns()) {
            track.finish(lambda, list);
            finishedByTask[task]++;
            begin(game, plays);
            return;
        }
        Planes.swap(planes, 8 * game);
        unknown[game] = formula;
        if (!formula) {
            Chances.swap(chances, 6 * chosen);
            System.arraycopy(chances, 6 * chosen, values, 6 * game, 6);
        }
        if (track.full()) {
            track.shift(lambda, list);
        }
    }

    private void playFormula(int game, Roll roll, PlayGenerator plays, FormulaSides.Players players) {
        plays.generate(planes, 8 * game, roll.high(), roll.low());
        int chosen = players.choose(formulas, game, turns[game], planes, plays);
        System.arraycopy(plays.results(), 8 * chosen, planes, 8 * game, 8);
    }

    private int choose(int game, int kept, int best, float[] chances) {
        if (kept == 1 || randoms[game].nextDouble() >= rules.strayShare()) {
            return best;
        }
        int chosen = randoms[game].nextInt(kept);
        boolean near = Chances.equity(chances, 6 * chosen) >= Chances.equity(chances, 6 * best) - rules.margin();
        return near ? chosen : best;
    }
}
