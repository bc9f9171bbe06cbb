package org.pipwright.cli.command;

import java.util.function.Supplier;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.cli.report.DrillOwnGames;
import org.pipwright.engine.drill.CubeOpinion;
import org.pipwright.engine.drill.Drill;
import org.pipwright.engine.drill.DrillSettings;
import org.pipwright.engine.drill.Weaker;

/** Exercises from games that the judging net plays with itself. */
final class OwnGamesSearch {
    private OwnGamesSearch() {}

    static DrillSearch of(DrillSettings settings, Contestant other) {
        return new DrillSearch(
                new DrillOwnGames(settings, other),
                settings.count(),
                "games",
                settings.clarity().lookahead(),
                "lower --cost or --margin, or raise --most-games",
                (knowledge, listener, threads) -> new Drill(settings, knowledge, weaker(other), listener).run(threads));
    }

    private static Weaker weaker(Contestant other) {
        Supplier<CubeOpinion> opinions = other.net().isEmpty()
                ? CubeOpinion::byPips
                : () -> CubeOpinion.of(
                        other.entrant().valuers().orElseThrow().get(),
                        other.net().get().lookahead());
        return new Weaker(other.name(), other.entrant().players(), opinions);
    }
}
