package org.pipwright.engine.search;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.parallel.Crew;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * The replies of positions to all rolls, looked into by a crew roll by roll. What is found of a question's positions without
 * lookahead is kept until the next question.
 */
final class RollByRoll {
    private final Crew<SearchWorker> crew;
    private final Expansions expansions = new Expansions();

    RollByRoll(Crew<SearchWorker> crew) {
        this.crew = crew;
    }

    /** Begins another question. */
    void forget() {
        expansions.forget();
    }

    /**
     * Values positions with a lookahead of at least 1.
     *
     * @param batch the positions, and where to write
     * @param size how many they are
     * @param lookahead number of future rolls to average over
     * @param columns the columns of a worker that are asked about
     */
    void value(Batch batch, int size, int lookahead, Function<SearchWorker, Columns> columns) {
        SearchWorker first = crew.workers().get(0);
        int[] pending = new int[size];
        int count = 0;
        for (int k = 0; k < size; k++) {
            if (!first.search().known(batch, k, lookahead, columns.apply(first))) {
                pending[count++] = k;
            }
        }
        valueRollByRoll(batch, Arrays.copyOf(pending, count), lookahead, columns);
    }

    /** The replies of some positions, whose first planes lie at given places, to all rolls without lookahead. */
    private Expansion[] expand(int[] planes, int[] places, Function<SearchWorker, Columns> columns) {
        Expansion[] all = new Expansion[places.length];
        int[] missing = new int[places.length];
        int count = 0;
        for (int k = 0; k < places.length; k++) {
            all[k] = expansions.find(planes, places[k]);
            if (all[k] == null) {
                missing[count++] = k;
            }
        }
        int parts = Expansion.parts(count, crew.size());
        for (int m = 0; m < count; m++) {
            all[missing[m]] = expansions.make(parts);
        }
        crew.run(count * parts, (worker, task) -> {
            int k = missing[task / parts];
            int part = task % parts;
            worker.search()
                    .expand(
                            planes,
                            places[k],
                            all[k].first(part),
                            all[k].first(part + 1),
                            columns.apply(worker),
                            all[k].parts().get(part));
        });
        for (int m = 0; m < count; m++) {
            expansions.keep(planes, places[missing[m]], all[missing[m]]);
        }
        return all;
    }

    /** One task a roll: 21 times as many as positions, so that no thread is left waiting for long. */
    private void valueRollByRoll(Batch batch, int[] pending, int lookahead, Function<SearchWorker, Columns> columns) {
        int count = pending.length;
        int[] places = Arrays.stream(pending).map(k -> k * Planes.STRIDE).toArray();
        Expansion[] expanded = expand(batch.planes, places, columns);
        float[] chances = new float[count * Roll.COUNT * Outcomes.COUNT];
        double[] worth = new double[count * Roll.COUNT * batch.cubes];
        crew.run(count * Roll.COUNT, (worker, task) -> {
            int roll = task % Roll.COUNT;
            Lookahead search = worker.search();
            Replies found =
                    search.reply(expanded[task / Roll.COUNT].of(roll), roll, lookahead - 1, columns.apply(worker));
            int best = search.best(found, roll, lookahead - 1, Columns.CUBELESS);
            System.arraycopy(found.chances(), best * Outcomes.COUNT, chances, task * Outcomes.COUNT, Outcomes.COUNT);
            for (int cube = 0; cube < batch.cubes; cube++) {
                worth[task * batch.cubes + cube] =
                        found.worth(search.best(found, roll, lookahead - 1, 1 + cube), 1 + cube);
            }
        });
        SearchWorker first = crew.workers().get(0);
        for (int p = 0; p < count; p++) {
            RollMean mean = new RollMean(batch.cubes);
            for (int roll = 0; roll < Roll.COUNT; roll++) {
                int task = p * Roll.COUNT + roll;
                mean.add(roll, chances, task * Outcomes.COUNT);
                for (int cube = 0; cube < batch.cubes; cube++) {
                    mean.add(roll, cube, worth[task * batch.cubes + cube]);
                }
            }
            mean.write(batch, pending[p]);
            first.search().store(batch, pending[p], lookahead, columns.apply(first));
        }
    }

    /** The best reply to each of the 21 rolls, without a cube. */
    List<RollReply> replies(Position position, int lookahead) {
        int[] planes = position.toPlanes();
        RollReply[] replies = new RollReply[Roll.COUNT];
        expansions.limit();
        Expansion expanded = expand(planes, new int[1], worker -> Columns.NONE)[0];
        crew.run(Roll.COUNT, (worker, roll) -> {
            Lookahead search = worker.search();
            Replies found = search.reply(expanded.of(roll), roll, lookahead, Columns.NONE);
            int best = search.best(found, roll, lookahead, Columns.CUBELESS);
            Roll rolled = Roll.all().get(roll);
            Play play = Plays.to(position, rolled, found.results(), best * Planes.STRIDE);
            replies[roll] = new RollReply(rolled, play, Outcomes.of(found.chances(), best * Outcomes.COUNT));
        });
        return List.of(replies);
    }

    /** The chances after the best reply to each of some rolls that hits nothing, without lookahead; empty where every reply hits. */
    List<Optional<Outcomes>> quietReplies(Position position, List<Roll> rolls) {
        int[] planes = position.toPlanes();
        Outcomes[] quiet = new Outcomes[rolls.size()];
        int parts = Math.min(crew.size(), quiet.length);
        crew.run(parts, (worker, part) -> {
            int first = quiet.length * part / parts;
            List<Roll> own = rolls.subList(first, quiet.length * (part + 1) / parts);
            System.arraycopy(worker.search().quietReplies(planes, 0, own), 0, quiet, first, own.size());
        });
        return Arrays.stream(quiet).map(Optional::ofNullable).toList();
    }
}
