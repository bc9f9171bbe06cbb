package org.pipwright.engine.review;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.rollout.CubefulRolloutReport;
import org.pipwright.engine.rollout.CubefulRollouts;
import org.pipwright.engine.rollout.CubefulStart;
import org.pipwright.engine.rollout.RolloutFile;

/** Games played out with the cube where a decision seems to have cost something. Serves one thread. */
final class Games implements AutoCloseable {
    private final CubefulRollouts rollouts;
    private final BooleanSupplier stopped;

    Games(
            Supplier<PositionEvaluator> evaluators,
            Function<Stakes, CubeTerms> terms,
            ReviewSettings settings,
            BooleanSupplier stopped) {
        this.stopped = stopped;
        rollouts = settings.games() == 0 ? null : new CubefulRollouts(evaluators, () -> terms, settings.rollouts(), 1);
    }

    boolean wanted() {
        return rollouts != null;
    }

    /** What plays leave the side that makes them. */
    CubefulRolloutReport compare(List<Play> plays, CubeState cube, Stakes stakes) {
        List<CubefulStart> starts =
                plays.stream().map(play -> CubefulStart.after(play, cube)).collect(Collectors.toList());
        return whole(rollouts.compare(starts, stakes, cube.value(), this::goOn));
    }

    /** The values of the cube actions. */
    CubeValues values(Position position, CubeState cube, Stakes stakes) {
        CubefulRolloutReport report = whole(rollouts.actions(position, cube, stakes, RolloutFile.NONE, this::goOn));
        return report.actions().orElseThrow().values();
    }

    private boolean goOn(CubefulRolloutReport standings) {
        return !stopped.getAsBoolean();
    }

    /** What was stopped halfway is no answer. */
    private CubefulRolloutReport whole(CubefulRolloutReport report) {
        if (stopped.getAsBoolean()) {
            throw new CancellationException("the review was stopped");
        }
        return report;
    }

    @Override
    public void close() {
        if (rollouts != null) {
            rollouts.close();
        }
    }
}
