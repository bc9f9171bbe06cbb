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
import org.pipwright.engine.cube.CubefulSearch;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.cubeplay.CubefulRanker;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.StoppableEvaluator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.record.Entry;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.LookaheadSettings;
import org.pipwright.engine.search.PlaySearch;

/** Finds out about single turns. What it finds depends on the turn and the settings alone. Serves one thread. */
final class Reviewer implements AutoCloseable {
    private final ReviewSettings settings;
    private final Supplier<Judgement> judgements;
    private final Function<Stakes, CubeTerms> makeTerms;
    private final Map<Stakes, CubeTerms> terms = new HashMap<>();
    private final Map<Stakes, CubefulRanker> rankers = new HashMap<>();
    private final PlaySearch chances;
    private final CubefulSearch cube;
    private final RollWorth rolls;
    private final Games games;

    Reviewer(
            Supplier<Judgement> patient,
            Function<Stakes, CubeTerms> makeTerms,
            ReviewSettings settings,
            BooleanSupplier stopped) {
        this.settings = settings;
        this.makeTerms = makeTerms;
        judgements = () -> stoppable(patient.get(), stopped);
        chances = new PlaySearch(judgements, LookaheadSettings.DEFAULT, 1);
        cube = new CubefulSearch(judgements.get().evaluator());
        rolls = new RollWorth(judgements.get().evaluator());
        games = new Games(() -> judgements.get().evaluator(), this::terms, settings, stopped);
    }

    private static Judgement stoppable(Judgement judgement, BooleanSupplier stopped) {
        return new Judgement(new StoppableEvaluator(judgement.evaluator(), stopped), judgement.horizon());
    }

    CubeTerms terms(Stakes stakes) {
        return terms.computeIfAbsent(stakes, makeTerms);
    }

    Finding find(Moment moment) {
        CubeTerms mine = terms(moment.stakes());
        Outcomes before = chances.odds(moment.position(), settings.lookahead());
        Optional<CubeValues> values = moment.mayDouble() ? Optional.of(values(moment, mine)) : Optional.empty();
        if (moment.played().isEmpty()) {
            return new Finding(before, values, OptionalDouble.empty(), List.of());
        }
        Worth worth = new Worth(mine, moment.rolling());
        Entry.Turn turn = moment.played().get();
        double luck = rolls.luck(moment.position(), turn.roll(), moment.opening(), worth);
        List<PlayOption> options = new PlayChoice(ranker(moment.stakes()), games, settings.lookahead())
                .options(moment.position(), turn, moment.rolling(), moment.stakes(), worth.point());
        return new Finding(before, values, OptionalDouble.of(luck), options);
    }

    private CubefulRanker ranker(Stakes stakes) {
        return rankers.computeIfAbsent(stakes, key -> new CubefulRanker(judgements, () -> terms(key), 1));
    }

    /** With games if lookahead finds that what was done with the cube costs something. */
    private CubeValues values(Moment moment, CubeTerms mine) {
        Position position = moment.position();
        CubeState state = moment.cube();
        CubeValues values = cube.values(position, state, mine, settings.lookahead());
        if (!games.wanted() || mine.exact(position, state).isPresent() || !costly(moment, values, mine)) {
            return values;
        }
        return games.values(position, state, moment.stakes());
    }

    private static boolean costly(Moment moment, CubeValues values, CubeTerms mine) {
        return Decisions.ofCube(moment, values, mine).stream().anyMatch(decision -> decision.grade() != Grade.FINE);
    }

    @Override
    public void close() {
        chances.close();
        rankers.values().forEach(CubefulRanker::close);
        games.close();
    }
}
