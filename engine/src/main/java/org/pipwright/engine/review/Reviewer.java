package org.pipwright.engine.review;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.Supplier;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.CubefulRanker;
import org.pipwright.engine.evaluation.StoppableEvaluator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.record.Entry;
import org.pipwright.engine.search.ChanceCache;
import org.pipwright.engine.search.CubeValued;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.ParallelLookahead;
import org.pipwright.engine.search.RollLuck;

/** Finds out about single turns. What it finds depends on the turn and the settings alone. Serves one thread. */
final class Reviewer implements AutoCloseable {
    private final ReviewSettings settings;
    private final Function<Stakes, CubeTerms> makeTerms;
    private final Map<Stakes, CubeTerms> terms = new HashMap<>();
    private final ParallelLookahead search;
    private final RollLuck rolls;
    private final Games games;

    /** With a memory that all reviewers of a review share. */
    Reviewer(
            Supplier<Judgement> patient,
            Function<Stakes, CubeTerms> makeTerms,
            ReviewSettings settings,
            ChanceCache memory,
            BooleanSupplier stopped) {
        this.settings = settings;
        this.makeTerms = makeTerms;
        Supplier<Judgement> judgements = () -> stoppable(patient.get(), stopped);
        search = new ParallelLookahead(judgements, () -> this::terms, LookaheadSettings.DEFAULT, 1, memory, stopped);
        rolls = new RollLuck(judgements.get().evaluator());
        games = new Games(() -> judgements.get().evaluator(), this::terms, settings, stopped);
    }

    private static Judgement stoppable(Judgement judgement, BooleanSupplier stopped) {
        return new Judgement(new StoppableEvaluator(judgement.evaluator(), stopped), judgement.horizon());
    }

    CubeTerms terms(Stakes stakes) {
        CubeTerms found = terms.get(stakes);
        if (found == null) {
            found = makeTerms.apply(stakes);
            terms.put(stakes, found);
            terms.put(stakes.swapped(), found.swapped());
        }
        return found;
    }

    Finding find(Moment moment) {
        CubeTerms mine = terms(moment.stakes());
        CubeValued before = search.evaluate(moment.position(), moment.cube(), mine, settings.lookahead());
        Optional<CubeValues> values =
                moment.mayDouble() ? Optional.of(values(moment, mine, before.values())) : Optional.empty();
        if (moment.played().isEmpty()) {
            return new Finding(before.outcomes(), values, OptionalDouble.empty(), List.of());
        }
        Worth worth = new Worth(mine, moment.rolling());
        Entry.Turn turn = moment.played().get();
        double luck =
                rolls.measure(moment.position().toPlanes(), 0, turn.roll(), moment.opening(), mine, moment.rolling());
        List<PlayOption> options = new PlayChoice(new CubefulRanker(search, mine), games, settings.lookahead())
                .options(moment.position(), turn, moment.rolling(), moment.stakes(), worth.point());
        return new Finding(before.outcomes(), values, OptionalDouble.of(luck), options);
    }

    /** With games if lookahead finds that what was done with the cube costs something. */
    private CubeValues values(Moment moment, CubeTerms mine, CubeValues looked) {
        Position position = moment.position();
        CubeState state = moment.cube();
        if (!games.wanted() || mine.exact(position, state).isPresent() || !costly(moment, looked, mine)) {
            return looked;
        }
        return games.values(position, state, moment.stakes());
    }

    private static boolean costly(Moment moment, CubeValues values, CubeTerms mine) {
        return Decisions.ofCube(moment, values, mine).stream().anyMatch(decision -> decision.grade() != Grade.FINE);
    }

    @Override
    public void close() {
        search.close();
        games.close();
    }
}
