package org.pipwright.bench.cube;

import java.util.Locale;
import org.pipwright.bench.BenchCommand;
import org.pipwright.bench.NetOption;
import org.pipwright.bench.SeedOption;
import org.pipwright.bench.Within;
import org.pipwright.engine.cube.CubeEfficiency;
import org.pipwright.engine.cube.CubeGame;
import org.pipwright.engine.cube.CubeOwner;
import org.pipwright.engine.cube.CubeState;
import org.pipwright.engine.cube.EfficiencyByRegime;
import org.pipwright.engine.cube.GammonShares;
import org.pipwright.engine.cube.MoneyModel;
import org.pipwright.engine.cube.MoneyStakes;
import org.pipwright.engine.cube.MoneyTerms;
import org.pipwright.engine.cubeplay.JudgingPlayer;
import org.pipwright.engine.cubeplay.StakedGames;
import org.pipwright.engine.evaluation.Outcomes;
import org.pipwright.engine.evaluation.PositionEvaluator;
import org.pipwright.engine.match.EvaluatingPlayer;
import org.pipwright.engine.match.GameLoop;
import org.pipwright.engine.match.Player;
import org.pipwright.engine.match.TurnListener;
import org.pipwright.engine.network.NetworkEvaluator;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Dice;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * Plays games with the cube from positions with contact and compares what they earn with the model: the efficiency that
 * the results come to, for owners at different chances. One position is drawn from each of a net's games against itself;
 * money without the Jacoby rule, the same net moving the checkers and the shipped model deciding about the cube.
 */
@Command(name = "contact-fit", description = "Cube efficiencies in contact, from games with the cube.")
public final class ContactFitCommand extends BenchCommand {
    private static final MoneyStakes STAKES = new MoneyStakes(false, false);
    private static final int LAST_TURN = 30;

    /** The sums of a fit of one number for owners within some chances. */
    private static final class Sums {
        private double products;
        private double gains;
        private double noise;
        private int count;

        /** A result, and the model's equities with a dead and a live cube. */
        void add(double result, double dead, double live) {
            gains += (live - dead) * (result - dead);
            products += (live - dead) * (live - dead);
            noise += Math.pow((live - dead) * (result - dead), 2);
            count++;
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "n %6d  efficiency %.2f +- %.2f",
                    count,
                    gains / products,
                    Math.sqrt(noise) / products);
        }
    }

    @Mixin
    private NetOption net;

    @Option(
            names = "--positions",
            paramLabel = "N",
            description = "Games to draw a position from (default: ${DEFAULT-VALUE}).")
    @Within(min = 1, max = 100_000_000)
    private int wanted = 40_000;

    @Mixin
    private SeedOption seedOption;

    private final StakedGames games = new StakedGames();
    private PositionEvaluator evaluator;
    private StakedGames.Side side;
    private final Sums[] byChance = {new Sums(), new Sums(), new Sums()};

    @Override
    protected void run() {
        evaluator = new NetworkEvaluator(net.load());
        MoneyTerms terms = new MoneyTerms(STAKES, null);
        side = new StakedGames.Side(new EvaluatingPlayer(evaluator), new JudgingPlayer(evaluator, stakes -> terms, 0));
        long seed = seedOption.value();
        for (int game = 0; game < wanted; game++) {
            Position position = draw(seed, game);
            if (position != null) {
                measure(position, seed, game);
            }
        }
        out().println("shipped: " + EfficiencyByRegime.CONTACT);
        String[] names = {"20 to 40 %", "40 to 60 %", "60 to 80 %"};
        for (int i = 0; i < names.length; i++) {
            out().println("owner's chance " + names[i] + ": " + byChance[i]);
        }
    }

    /** The position at a random turn of a game; null if it has no contact by then or is over. */
    private Position draw(long seed, int game) {
        Dice dice = Dice.ofGame(seed, game);
        int[] turn = {0};
        int wanted = 2 + dice.below(LAST_TURN);
        Position[] found = {null};
        Player player = new EvaluatingPlayer(evaluator);
        new GameLoop()
                .play(Position.start(), dice.opening(), player, player, dice, dice, (planes, roll, legal, chosen) -> {
                    if (turn[0]++ == wanted) {
                        found[0] = Position.ofPlanes(planes, 0);
                    }
                });
        return found[0] != null && found[0].contact() ? found[0] : null;
    }

    /** Plays on twice with the same dice, the cube owned by the one and by the other side, at 2, which no rule minds. */
    private void measure(Position position, long seed, int game) {
        Outcomes outcomes = evaluator.evaluate(position);
        for (CubeOwner owner : new CubeOwner[] {CubeOwner.ME, CubeOwner.THEM}) {
            double chance = owner == CubeOwner.ME ? outcomes.win() : 1 - outcomes.win();
            if (chance < 0.2 || chance >= 0.8) {
                continue;
            }
            CubeState cube = new CubeState(2, owner);
            Dice dice = Dice.ofGame(~seed, game);
            int points = games.play(
                    position,
                    new CubeGame(STAKES, cube),
                    dice::next,
                    side,
                    side,
                    dice,
                    TurnListener.NONE,
                    StakedGames.Ending.NONE);
            double dead = equity(outcomes, cube, 0);
            double live = equity(outcomes, cube, 1);
            byChance[(int) (5 * chance) - 1].add(points / 2.0, dead, live);
        }
    }

    private static double equity(Outcomes outcomes, CubeState cube, double efficiency) {
        return new MoneyModel(STAKES, CubeEfficiency.constant(efficiency))
                .curves(GammonShares.of(outcomes), cube)
                .at(outcomes.win())
                .best();
    }
}
