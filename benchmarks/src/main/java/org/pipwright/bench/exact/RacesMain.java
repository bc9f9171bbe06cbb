package org.pipwright.bench.exact;

import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.Function;
import org.pipwright.bench.Main;
import org.pipwright.bench.Options;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.OneSidedTable;
import org.pipwright.engine.bearoff.RaceOutlook;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.evaluation.NetworkEvaluator;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.reduced.ReducedGame;
import org.pipwright.engine.reduced.ReducedOutcomes;
import org.pipwright.engine.reduced.ReducedSolver;
import org.pipwright.models.ModelCatalog;

/**
 * Prints how far simulated races, which see only the standard tables, and a net's chances of races are from those of a
 * larger table, of the exact two-sided table, and of the solved game with two checkers a side (the only one of the three
 * in which backgammons are exact). Races are random.
 */
public final class RacesMain {
    private static final int POINTS = 8;

    private static final double SOLVED = 1e-9;

    private final int races;
    private final EndgameTables standard;
    private final Function<Position, Outcomes> simulation;
    private final Function<Position, Outcomes> net;

    private RacesMain(Options options) {
        races = options.number("--races", 200, 1, 100_000);
        standard = tables(EndgameTables.HOME);
        simulation = position -> RaceOutlook.of(position, standard).outcomes();
        NetworkEvaluator evaluator = new NetworkEvaluator(ModelCatalog.shipped()
                .load(options.text("--net").orElse(ModelCatalog.shipped().defaultName())));
        net = evaluator::evaluate;
    }

    public static void main(String[] args) {
        Main.run(args, RacesMain::run);
    }

    private static void run(List<String> args) {
        new RacesMain(new Options(args, Set.of("--net", "--races"), Set.of())).print();
    }

    private static EndgameTables tables(SideIndex sides) {
        return EndgameTables.of(
                OneSidedTable.build(sides, 1, TableProgress.NONE),
                TwoSidedTable.build(EndgameTables.LAST_SIX, 1, TableProgress.NONE));
    }

    private void print() {
        EndgameTables wide = tables(new SideIndex(POINTS, Position.FULL));
        Function<Position, Outcomes> exact =
                position -> RaceOutlook.of(position, wide).outcomes();
        System.out.println("| races | chances of | win: rms, worst | gammon: rms, worst | backgammon: rms, worst |");
        System.out.println("| --- | --- | ---: | ---: | ---: |");
        row("1 to 6 checkers a side on points 1 to 6", "net", net, exact, random -> RandomRace.of(random, 6, 1, 6));
        row("7 to 15 on 1 to 6", "net", net, exact, random -> RandomRace.of(random, 6, 7, 15));
        row("15 on 1 to 8", "net", net, exact, random -> RandomRace.of(random, POINTS, 15, 15));
        row("15 on 1 to 8", "simulation", simulation, exact, random -> RandomRace.of(random, POINTS, 15, 15));
        row("1 to 6 against 15 on 1 to 8", "net", net, exact, random -> RandomRace.gammonish(random, POINTS));
        row("1 to 6 against 15 on 1 to 8", "simulation", simulation, exact, r -> RandomRace.gammonish(r, POINTS));
        ReducedGame two = new ReducedGame(2);
        ReducedSolver.Progress quiet = (number, allPlays, change) -> {};
        ReducedOutcomes solved = ReducedOutcomes.of(ReducedSolver.solve(two, 1, SOLVED, quiet), 1, quiet);
        row("2 against 2 of 2", "simulation", simulation, solved::evaluate, random -> RandomRace.ofTwo(random, two));
    }

    private void row(
            String title,
            String judge,
            Function<Position, Outcomes> judged,
            Function<Position, Outcomes> exact,
            Function<SplittableRandom, Position> maker) {
        SplittableRandom random = new SplittableRandom(1);
        ChanceErrors errors = new ChanceErrors();
        for (int n = 0; n < races; n++) {
            Position position = maker.apply(random);
            errors.add(judged.apply(position), exact.apply(position));
        }
        System.out.println("| " + title + " | " + judge + " | " + errors + " |");
    }
}
