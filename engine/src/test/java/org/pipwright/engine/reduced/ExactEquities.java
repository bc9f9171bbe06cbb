package org.pipwright.engine.reduced;

import org.pipwright.engine.play.PlayGenerator;
import org.pipwright.engine.position.Planes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;

/** Plays best by looking up the equity after each result. */
final class ExactEquities {
    private final ReducedTable table;

    ExactEquities(ReducedTable table) {
        this.table = table;
    }

    /** The position the opponent gets. */
    Position next(Position position, Roll roll) {
        PlayGenerator generator = new PlayGenerator();
        generator.generate(position.toPlanes(), 0, roll.high(), roll.low());
        int best = 0;
        for (int i = 1; i < generator.size(); i++) {
            if (table.equityAfter(generator.results(), i * Planes.STRIDE)
                    > table.equityAfter(generator.results(), best * Planes.STRIDE)) {
                best = i;
            }
        }
        return Position.ofPlanes(generator.results(), best * Planes.STRIDE).swapped();
    }
}
