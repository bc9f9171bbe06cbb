package org.pipwright.cli.command;

import java.util.Optional;
import java.util.function.BiPredicate;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.report.Bases;
import org.pipwright.cli.report.CubeJson;
import org.pipwright.cli.report.CubeReport;
import org.pipwright.cli.report.CubeText;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.RaceJudge;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.CubeTerms;
import org.pipwright.engine.cube.CubeValues;
import org.pipwright.engine.cube.CubeWindow;
import org.pipwright.engine.cube.CubeWindows;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.GammonValues;
import org.pipwright.engine.cube.MarketLosers;
import org.pipwright.engine.cube.Stakes;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.search.CubeSearch;
import org.pipwright.engine.search.Judgement;
import org.pipwright.engine.search.Lookahead;
import org.pipwright.engine.search.LookaheadSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Position and cube to the right cube actions of both sides. */
@Command(
        name = "cube",
        customSynopsis = "pipwright cube POSITION [options]",
        header = "Say whether to double, and whether to take or pass.",
        description = {
            "For the side on roll, before its roll: what it gets without doubling, with a double that is taken and with one"
                    + " that is passed; the right action of both sides and what each wrong one costs; the chance needed to"
                    + " take and the chances at which to double, at this position's share of gammons; and how often the next"
                    + " two rolls lose the market.",
            "Money play with the Jacoby rule unless --away says otherwise; its equities are points per unit of the present"
                    + " cube. In a match they are chances to win it."
        },
        footer = {
            "Examples:",
            "  pipwright cube 5@6 3@8 3@7 2@24 2@3 / 4@6 3@8 5@13 2@24 1@bar",
            "  pipwright cube 1@5 1@2 / 1@6 --cube 2 --owner me",
            "  pipwright cube start --away 2,4 --json"
        })
public final class CubeCommand extends CliCommand {
    @Mixin
    private PositionArgument position;

    @Mixin
    private CubeOptions options;

    @Option(
            names = "--lookahead",
            paramLabel = "N",
            defaultValue = "1",
            description = "Future rolls to average over, 0 to " + LookaheadSettings.MOST
                    + ". Default: 1. Races beyond the tables are played out many times instead.")
    private int lookahead;

    @Mixin
    private TablesOption tables;

    @Mixin
    private NetOption net;

    @Option(names = "--json", description = "Print JSON, in the form that cube.schema.json describes.")
    private boolean json;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public CubeCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        if (lookahead < 0 || lookahead > LookaheadSettings.MOST) {
            throw new UserError("--lookahead is " + lookahead + ": use 0 to " + LookaheadSettings.MOST);
        }
        CubeState cube = options.cube();
        Stakes stakes = options.stakes();
        Position read = position.read(console().in());
        if (read.finished()) {
            throw new UserError("the game is over in this position: there is nothing to double");
        }
        CubeReport report = report(read, cube, stakes);
        if (json) {
            CubeJson.write(report, out());
        } else {
            CubeText.write(report, out());
        }
        return 0;
    }

    private CubeReport report(Position read, CubeState cube, Stakes stakes) {
        EndgameTables standard = tables.standard(Runtime.getRuntime().availableProcessors(), console());
        CubeTerms terms = options.terms(standard).get();
        Model model = net.load();
        Judgement judgement = Judges.of(model, standard).get();
        PositionEvaluator evaluator = judgement.evaluator();
        boolean exact = terms.exact(read, cube).isPresent();
        boolean simulated = !exact && Bases.beyondTables(read);
        Outcomes outcomes = simulated ? RaceSimulation.odds(read, standard) : chances(judgement, read, exact);
        CubeValues values = simulated
                ? terms.values(read, outcomes, cube)
                : new CubeSearch(judgement).values(read, cube, terms, lookahead);
        Optional<CubeWindow> window = CubeWindows.of(terms, read, GammonShares.of(outcomes), cube);
        double losers = values.mayDouble()
                ? new MarketLosers(evaluator).share(read, passes(terms, cube, new RaceJudge(standard)))
                : Double.NaN;
        return new CubeReport(
                read,
                cube,
                stakes,
                NetLabel.of(net.name(), model),
                exact || simulated ? 0 : lookahead,
                exact,
                simulated,
                outcomes,
                values,
                window,
                GammonValues.of(terms, cube),
                losers);
    }

    /** As {@code odds} gives them with the same lookahead. */
    private Outcomes chances(Judgement judgement, Position read, boolean exact) {
        float[] six = new float[Outcomes.COUNT];
        new Lookahead(judgement, LookaheadSettings.DEFAULT).evaluate(read.toPlanes(), 0, exact ? 0 : lookahead, six, 0);
        return Outcomes.of(six, 0);
    }

    /** Races beyond the tables are simulated here too, or what loses the market would not fit the rest. */
    private static BiPredicate<Position, Outcomes> passes(CubeTerms terms, CubeState cube, RaceJudge judge) {
        return (position, outcomes) -> {
            Outcomes chances =
                    Bases.beyondTables(position) ? judge.outlook(position).outcomes() : outcomes;
            return terms.values(position, chances, cube).answer() == CubeAction.PASS;
        };
    }
}
