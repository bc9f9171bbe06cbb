package org.pipwright.bench.exact;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.function.Supplier;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.Nets;
import org.pipwright.bench.Within;
import org.pipwright.bench.games.Players;
import org.pipwright.bench.strength.Chooser;
import org.pipwright.engine.bearoff.EndgameTables;
import org.pipwright.engine.bearoff.OneSidedTable;
import org.pipwright.engine.bearoff.RaceJudge;
import org.pipwright.engine.bearoff.SideIndex;
import org.pipwright.engine.bearoff.TableProgress;
import org.pipwright.engine.bearoff.TwoSidedTable;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.reduced.ReducedGame;
import org.pipwright.engine.reduced.ReducedOutcomes;
import org.pipwright.engine.reduced.ReducedSolver;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.search.Judgement;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * Prints how far simulated races, which see only the standard tables, and a net's chances of races are from those of a
 * larger table, of the exact two-sided table, and of the solved game with two checkers a side (the only one of the three
 * in which backgammons are exact), and what plays chosen by either lose by the larger table. Races are random, or those
 * that games of the net against itself bring; in the latter it also says what plays lose that are chosen with the tables
 * where they are exact, which must be nothing.
 */
@Command(
        name = "races",
        description = "How far race simulations and a net are off exact chances, and what plays chosen by either lose.")
public final class RacesCommand extends BenchCommand {
    private static final int POINTS = PlayedRaces.NEAR;

    private static final double SOLVED = 1e-9;

    private static final int LOOKAHEAD = 2;

    /** Of the dice of games. */
    private static final int SEED = 1;

    @Mixin
    private NetOption netOption;

    @Option(names = "--races", paramLabel = "N", description = "Races of each kind (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 100_000)
    private int races = 200;

    private Model model;
    private Function<Position, Outcomes> net;
    private Function<Position, Outcomes> simulation;

    @Override
    protected void run() {
        model = netOption.load();
        net = new NetworkEvaluator(model)::evaluate;
        simulation = judge(tables(EndgameTables.HOME));
        print();
    }

    /** What a race is worth by some tables, and simulation beyond them. */
    private Function<Position, Outcomes> judge(EndgameTables tables) {
        RaceJudge judge = new RaceJudge(tables);
        return position -> position.finished()
                ? net.apply(position)
                : judge.outlook(position).outcomes();
    }

    private static EndgameTables tables(SideIndex sides) {
        return EndgameTables.of(
                OneSidedTable.build(sides, 1, TableProgress.NONE),
                TwoSidedTable.build(EndgameTables.LAST_SIX, 1, TableProgress.NONE));
    }

    private void print() {
        Function<Position, Outcomes> exact = judge(tables(new SideIndex(POINTS, Position.FULL)));
        int threads = Runtime.getRuntime().availableProcessors();
        PlayedRaces played = PlayedRaces.of(Knowledge.of(model)::judgement, races, SEED, threads);
        Function<SplittableRandom, Position> fifteen = random -> RandomRace.of(random, POINTS, 15, 15);
        Function<SplittableRandom, Position> gammonish = random -> RandomRace.gammonish(random, POINTS);
        out().println("| races | chances of | win: rms, worst | gammon: rms, worst | backgammon: rms, worst"
                + " | equity: mean, worst |");
        out().println("| --- | --- | ---: | ---: | ---: | ---: |");
        row("1 to 6 checkers a side on points 1 to 6", "net", net, exact, random -> RandomRace.of(random, 6, 1, 6));
        row("7 to 15 on 1 to 6", "net", net, exact, random -> RandomRace.of(random, 6, 7, 15));
        both("15 on 1 to 8", exact, fifteen);
        both("10 on 1 to 10", judge(tables(new SideIndex(10, 10))), random -> RandomRace.of(random, 10, 10, 10));
        both("6 on 1 to 12", judge(tables(new SideIndex(12, 6))), random -> RandomRace.of(random, 12, 6, 6));
        both("1 to 6 against 15 on 1 to 8", exact, gammonish);
        try (Judge judge = new Judge(Knowledge.of(model), threads)) {
            Effort effort = Effort.lookahead(LOOKAHEAD);
            Function<Position, Outcomes> deep =
                    position -> judge.ask(Question.before(position), effort).outcomes();
            row("15 on 1 to 8", "net, lookahead " + LOOKAHEAD, deep, exact, fifteen);
            row("1 to 6 against 15 on 1 to 8", "net, lookahead " + LOOKAHEAD, deep, exact, gammonish);
        }
        ReducedGame two = new ReducedGame(2);
        ReducedSolver.Progress quiet = (number, allPlays, change) -> {};
        ReducedOutcomes solved = ReducedOutcomes.of(ReducedSolver.solve(two, 1, SOLVED, quiet), 1, quiet);
        row("2 against 2 of 2", "simulation", simulation, solved::evaluate, random -> RandomRace.ofTwo(random, two));
        bearIn(played, exact);
        out().println();
        out().println("| plays of a random roll | chosen by | points lost a choice: mean, worst |");
        out().println("| --- | --- | ---: |");
        choices("15 on 1 to 8", exact, fifteen);
        choices("1 to 6 against 15 on 1 to 8", exact, gammonish);
        withTables("1 to 6 checkers a side on points 1 to 6", random(random -> RandomRace.of(random, 6, 1, 6)));
        withTables("races of the two-sided table in " + played.games() + " games", played.covered());
    }

    /** Few races are in reach of the larger table when contact ends: there it is where simulations end. */
    private void bearIn(PlayedRaces played, Function<Position, Outcomes> exact) {
        row("games: " + played.begun().size() + " races as contact ends", "net", net, exact, played.begun());
        String title = "the same games: all on 1 to " + POINTS + " at last, "
                + played.near().size() + " races";
        row(title, "net", net, exact, played.near());
        row(title, "simulation", simulation, exact, played.near());
    }

    private List<PlayedRaces.Decision> random(Function<SplittableRandom, Position> maker) {
        SplittableRandom random = new SplittableRandom(1);
        List<PlayedRaces.Decision> decisions = new ArrayList<>();
        // Quickly done, unlike simulations.
        for (int n = 0; n < 10 * races; n++) {
            decisions.add(new PlayedRaces.Decision(maker.apply(random), roll(random)));
        }
        return decisions;
    }

    private static Roll roll(SplittableRandom random) {
        return Roll.of(1 + random.nextInt(6), 1 + random.nextInt(6));
    }

    /** Plays as commands and duels choose them, by the exact table they use. */
    private void withTables(String title, List<PlayedRaces.Decision> decisions) {
        Supplier<Judgement> judgements = Nets.withTables(model, 1)::judgement;
        for (int lookahead = 0; lookahead <= LOOKAHEAD; lookahead++) {
            Chooser chooser = Chooser.byPlayer(Players.of(judgements.get(), lookahead));
            RaceChoices choices = new RaceChoices();
            decisions.forEach(each -> choices.add(each.position(), each.roll(), chooser, simulation));
            out().println("| " + title + " | tables, lookahead " + lookahead + " | " + choices + " |");
        }
    }

    private void both(String title, Function<Position, Outcomes> exact, Function<SplittableRandom, Position> maker) {
        row(title, "net", net, exact, maker);
        row(title, "simulation", simulation, exact, maker);
    }

    private void choices(String title, Function<Position, Outcomes> exact, Function<SplittableRandom, Position> maker) {
        for (boolean simulated : new boolean[] {false, true}) {
            SplittableRandom random = new SplittableRandom(1);
            RaceChoices choices = new RaceChoices();
            Chooser chooser = RaceChoices.by(simulated ? simulation : net);
            for (int n = 0; n < races; n++) {
                choices.add(maker.apply(random), roll(random), chooser, exact);
            }
            out().println("| " + title + " | " + (simulated ? "simulation" : "net") + " | " + choices + " |");
        }
    }

    private void row(
            String title,
            String judge,
            Function<Position, Outcomes> judged,
            Function<Position, Outcomes> exact,
            Function<SplittableRandom, Position> maker) {
        SplittableRandom random = new SplittableRandom(1);
        List<Position> made = new ArrayList<>();
        for (int n = 0; n < races; n++) {
            made.add(maker.apply(random));
        }
        row(title, judge, judged, exact, made);
    }

    private void row(
            String title,
            String judge,
            Function<Position, Outcomes> judged,
            Function<Position, Outcomes> exact,
            List<Position> positions) {
        ChanceErrors errors = new ChanceErrors();
        positions.forEach(position -> errors.add(judged.apply(position), exact.apply(position)));
        out().println("| " + title + " | " + judge + " | " + errors + " |");
    }
}
