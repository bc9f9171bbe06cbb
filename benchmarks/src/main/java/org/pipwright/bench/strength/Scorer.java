package org.pipwright.bench.strength;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.pipwright.engine.play.Plays;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.position.PositionText;
import org.pipwright.engine.roll.Roll;

/** What a chooser's plays lose, by regime and over all decisions. */
final class Scorer {
    /** A prime larger than any number of decisions, so that steps of it, around and around, come to all of them. */
    private static final int STRIDE = 7919;

    private final Map<Regime, Score> byRegime = new EnumMap<>(Regime.class);
    private final Score all = new Score();
    private final List<Choice> choices = new ArrayList<>();

    /** A play that was chosen, and the points that it loses against the best. */
    record Choice(Reference reference, String play, double loss) {}

    static Scorer of(List<Reference> references, Chooser chooser) {
        Scorer scorer = new Scorer();
        references.forEach(reference -> scorer.add(reference, chooser));
        return scorer;
    }

    /** Chooses plays of every regime until some time has passed. */
    static void warmUp(List<Reference> references, Chooser chooser, Duration time) {
        long end = System.nanoTime() + time.toNanos();
        for (int i = 0; System.nanoTime() < end; i++) {
            Reference reference = references.get((int) ((long) i * STRIDE % references.size()));
            chooser.choose(PositionText.parse(reference.position()), Roll.parse(reference.roll()));
        }
    }

    private void add(Reference reference, Chooser chooser) {
        Position position = PositionText.parse(reference.position());
        Roll roll = Roll.parse(reference.roll());
        long began = System.nanoTime();
        Position chosen = chooser.choose(position, roll);
        double seconds = (System.nanoTime() - began) / 1e9;
        String play = Plays.to(position, roll, chosen).toString();
        double loss = reference
                .loss(play)
                .orElseThrow(() -> new IllegalArgumentException(
                        "decision " + reference.id() + " has no value for " + play + ": make the reference anew"));
        boolean best = reference.isBest(play);
        choices.add(new Choice(reference, play, loss));
        all.add(loss, best, seconds);
        byRegime.computeIfAbsent(reference.regime(), regime -> new Score()).add(loss, best, seconds);
    }

    /**
     * What this one loses more than another on the same decisions, as the score of the differences: since both answer the
     * same decisions, its error is smaller than those of the two.
     */
    Score beyond(Scorer other) {
        Score differences = new Score();
        for (int i = 0; i < choices.size(); i++) {
            differences.add(choices.get(i).loss() - other.choices.get(i).loss(), false, 0);
        }
        return differences;
    }

    /** The choices that lose most, the costliest first; none that lose nothing. */
    List<Choice> worst(int most) {
        return choices.stream()
                .filter(choice -> choice.loss() > 0)
                .sorted(Comparator.comparingDouble(Choice::loss).reversed())
                .limit(most)
                .collect(Collectors.toList());
    }

    Score all() {
        return all;
    }

    Map<Regime, Score> byRegime() {
        return byRegime;
    }
}
