package org.pipwright.cli.command;

import java.util.List;
import java.util.function.Supplier;
import org.pipwright.cli.duel.Contestant;
import org.pipwright.cli.report.DrillOwnGames;
import org.pipwright.cli.report.DrillSource;
import org.pipwright.engine.drill.CubeOpinion;
import org.pipwright.engine.drill.Drill;
import org.pipwright.engine.drill.DrillListener;
import org.pipwright.engine.drill.DrillSettings;
import org.pipwright.engine.drill.Exercise;
import org.pipwright.engine.drill.Weaker;
import org.pipwright.engine.judge.Knowledge;

/** Exercises from games that the judging net plays with itself. */
final class OwnGamesSearch implements DrillSearch {
    private final DrillSettings settings;
    private final Contestant other;
    private final Drill drill;

    OwnGamesSearch(DrillSettings settings, Contestant other, Knowledge knowledge, DrillListener listener) {
        this.settings = settings;
        this.other = other;
        drill = new Drill(settings, knowledge, weaker(other), listener);
    }

    private static Weaker weaker(Contestant other) {
        Supplier<CubeOpinion> opinions = other.net().isEmpty()
                ? CubeOpinion::byPips
                : () -> CubeOpinion.of(
                        other.entrant().valuers().orElseThrow().get(),
                        other.net().get().lookahead());
        return new Weaker(other.name(), other.entrant().players(), opinions);
    }

    @Override
    public DrillSource source() {
        return new DrillOwnGames(settings, other);
    }

    @Override
    public int wanted() {
        return settings.count();
    }

    @Override
    public int lookahead() {
        return settings.clarity().lookahead();
    }

    @Override
    public List<Exercise> run(int threads) {
        return drill.run(threads);
    }

    @Override
    public void stop() {
        drill.stop();
    }

    @Override
    public boolean stopped() {
        return drill.stopped();
    }

    @Override
    public String advice() {
        return "lower --cost or --margin, or raise --most-games";
    }
}
