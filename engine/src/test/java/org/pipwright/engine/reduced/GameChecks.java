package org.pipwright.engine.reduced;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** What must hold of a solved game. The tables were computed by separate programs. */
final class GameChecks {
    private final ReducedTable table;
    private final String prefix;

    GameChecks(ReducedTable table, String prefix) {
        this.table = table;
        this.prefix = prefix;
    }

    void equities(double tolerance) {
        for (String[] row : CheckRow.rows(prefix + "-positions.tsv")) {
            Position position = CheckRow.position(row[1], row[2]);
            assertEquals(Double.parseDouble(row[3]), table.equity(position), tolerance, position::toString);
        }
    }

    /** Equally good plays may differ in how they win, so chances are not unique: tolerance 0.001. */
    void chances(PositionEvaluator evaluator) {
        for (String[] row : CheckRow.rows(prefix + "-positions.tsv")) {
            Position position = CheckRow.position(row[1], row[2]);
            Outcomes outcomes = evaluator.evaluate(position);
            double[] found = {
                outcomes.winSingle(), outcomes.winGammon(), outcomes.winBackgammon(),
                outcomes.loseSingle(), outcomes.loseGammon(), outcomes.loseBackgammon()
            };
            for (int k = 0; k < found.length; k++) {
                assertEquals(Double.parseDouble(row[4 + k]), found[k], 1e-3, position::toString);
            }
        }
    }

    /** The best result of each roll from the start has the listed equity, and is the listed one or as good. */
    void openings(double tolerance) {
        Position start = Position.start(table.game().checkers());
        for (String[] row : CheckRow.rows(prefix + "-opening.tsv")) {
            Roll roll = Roll.of(Integer.parseInt(row[0]), Integer.parseInt(row[1]));
            double listed = Double.parseDouble(row[4]);
            assertEquals(listed, best(start, roll), tolerance, roll::toString);
            int[] result = CheckRow.position(row[2], row[3]).toPlanes();
            assertEquals(listed, table.equityAfter(result, 0), tolerance, roll::toString);
        }
    }

    private double best(Position position, Roll roll) {
        PlayGenerator generator = new PlayGenerator();
        generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
        double best = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < generator.size(); i++) {
            best = Math.max(best, table.equityAfter(generator.results(), i * Planes.STRIDE));
        }
        return best;
    }

    /** Mean of the best plays' equities over the 15 rolls that can open a game. */
    double openingEquity() {
        Position start = Position.start(table.game().checkers());
        return Roll.opening().stream()
                .mapToDouble(roll -> best(start, roll))
                .average()
                .orElseThrow();
    }

    /** Every equity is the mean of the best plays' equities, found with the generator of the full game. */
    void fixedPoint(int samples, double tolerance) {
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < samples; i++) {
            Position position = PlayByPlay.random(table.game(), random);
            assertEquals(
                    PlayByPlay.backup(position, table::equity), table.equity(position), tolerance, position::toString);
        }
    }

    void chancesGiveEquities(PositionEvaluator evaluator, int samples) {
        SplittableRandom random = new SplittableRandom(6);
        for (int i = 0; i < samples; i++) {
            Position position = PlayByPlay.random(table.game(), random);
            assertEquals(table.equity(position), evaluator.evaluate(position).equity(), 1e-5, position::toString);
        }
    }
}
