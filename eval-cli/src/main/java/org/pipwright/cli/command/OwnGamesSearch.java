package org.pipwright.cli.command;

import org.pipwright.cli.duel.Contestant;
import org.pipwright.cli.report.DrillOwnGames;
import org.pipwright.engine.drill.Drill;
import org.pipwright.engine.drill.DrillSettings;

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
                (knowledge, listener, workers) -> {
                    Drill drill = new Drill(settings, knowledge, other.entrant(), listener);
                    return workers.have(drill::run, drill::run);
                });
    }
}
