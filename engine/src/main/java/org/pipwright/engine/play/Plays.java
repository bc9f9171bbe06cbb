package org.pipwright.engine.play;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.pipwright.engine.PublicApi;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/**
 * Legal plays with their steps, for input and output; hot loops use {@link PlayGenerator} and come here only for what
 * they show.
 */
@PublicApi
public final class Plays {
    private static final ThreadLocal<PlayGenerator> GENERATOR = ThreadLocal.withInitial(PlayGenerator::new);

    private Plays() {}

    /**
     * Some plays of a roll, each once.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param plays plays of that position and roll
     * @return these plays in the order given, distinct by resulting position
     * @throws IllegalArgumentException if a play is not one of this position and roll
     */
    public static List<Play> distinct(Position position, Roll roll, List<Play> plays) {
        Map<Position, Play> distinct = new LinkedHashMap<>();
        for (Play play : plays) {
            distinct.putIfAbsent(to(position, roll, play.result()).result(), play);
        }
        return List.copyOf(distinct.values());
    }

    /**
     * The positions plays lead to, as the play generator gives them.
     *
     * @param plays any number of plays
     * @return {@link Planes#STRIDE} numbers a play, the mover's side first
     */
    public static int[] results(List<Play> plays) {
        int[] results = new int[plays.size() * Planes.STRIDE];
        for (int i = 0; i < plays.size(); i++) {
            plays.get(i).result().copyTo(results, i * Planes.STRIDE);
        }
        return results;
    }

    /**
     * All plays of a roll, distinct by resulting position.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @return at least one; if no checker can move, the one play without steps
     * @throws IllegalArgumentException if the game is over
     */
    public static List<Play> legal(Position position, Roll roll) {
        Map<Position, List<Step>> results = results(position, roll);
        StepSearch.fill(position, roll, results);
        List<Play> plays = new ArrayList<>(results.size());
        results.forEach((result, steps) -> plays.add(new Play(steps, result)));
        return plays;
    }

    /**
     * The play that leads to a result of {@link PlayGenerator}.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param results array that holds the result, from the mover's side, as the generator gives it
     * @param at index of the result's first plane
     * @return the play
     * @throws IllegalArgumentException if no play of the roll leads there
     */
    public static Play to(Position position, Roll roll, int[] results, int at) {
        return to(position, roll, Position.ofPlanes(results, at));
    }

    /**
     * The play that leads to a position.
     *
     * @param position an unfinished position
     * @param roll the roll
     * @param result the position after the play, from the mover's side
     * @return the play
     * @throws IllegalArgumentException if no play of the roll leads there
     */
    public static Play to(Position position, Roll roll, Position result) {
        Map<Position, List<Step>> wanted = results(position, roll);
        if (!wanted.containsKey(result)) {
            throw new IllegalArgumentException("no play of " + roll + " leads from " + position + " to " + result);
        }
        wanted.keySet().retainAll(List.of(result));
        StepSearch.fill(position, roll, wanted);
        return new Play(wanted.get(result), result);
    }

    /** The generator's results in its order, each with no steps yet. */
    private static Map<Position, List<Step>> results(Position position, Roll roll) {
        if (position.finished()) {
            throw new IllegalArgumentException("the game is over: no roll follows");
        }
        PlayGenerator generator = GENERATOR.get();
        int count = generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
        Map<Position, List<Step>> results = new LinkedHashMap<>();
        for (int i = 0; i < count; i++) {
            results.put(Position.ofPlanes(generator.results(), i * Planes.STRIDE), List.of());
        }
        return results;
    }
}
