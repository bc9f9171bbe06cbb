package org.pipwright.cli.command;

import java.util.ArrayList;
import java.util.List;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.duel.Interruption;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.RolloutJson;
import org.pipwright.cli.report.RolloutSummary;
import org.pipwright.cli.report.RolloutText;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.position.Position;
import org.pipwright.engine.roll.Roll;
import org.pipwright.engine.rollout.RolloutSettings;
import org.pipwright.engine.rollout.Rollouts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Position, perhaps with a roll, to chances by playing on many times. */
@Command(
        name = "rollout",
        customSynopsis = "pipwright rollout POSITION [--roll ROLL] [options]",
        header = "Play a position out many times.",
        description = {
            "With --roll: compares the best plays of the roll, or those of --plays. Without: the chances before the roll."
                    + " Each candidate gets the same dice; the first two throws are spread evenly over all there are; and"
                    + " the luck of each roll, as the net sees it, is taken off the results, which leaves the mean where it"
                    + " is and makes the errors smaller (by how much is printed). All figures come with their standard"
                    + " errors. An interrupt (Ctrl-C) prints what is known so far.",
            "With a cube or a score (--cube 1 for money play with the cube in the centre, --away 3,5 for a match) both sides"
                    + " double, take and pass in the games, by the net's chances and the cube model, and play for points or"
                    + " for the match; without --roll the cube actions before the roll are compared."
        },
        footer = {
            "Examples:",
            "  pipwright rollout start --roll 3-1 --plays \"8/5 6/5; 24/23 13/10\"",
            "  pipwright rollout start --trials 144 --truncate 12",
            "  pipwright rollout 5@6 3@8 3@7 2@24 2@3 / 4@6 3@8 5@13 2@24 1@bar --cube 1 --trials 360",
            "  pipwright rollout start --roll 6-2 --until-sure 3 --trials 20000 --save 62.rollout"
        })
public final class RolloutCommand extends CliCommand {
    @Mixin
    private PositionArgument position;

    @Option(
            names = "--roll",
            paramLabel = "ROLL",
            converter = RollConverter.class,
            description = "The two dice, as in 3-1 or 31.")
    private Roll roll;

    @Mixin
    private PlaysOption plays;

    @Option(
            names = "--top",
            paramLabel = "N",
            description = "Without --plays: compare the N best plays as the net sees them; those far behind are left"
                    + " out. Default: " + Verdict.CANDIDATES + ".")
    private int top = Verdict.CANDIDATES;

    @Mixin
    private CubeOptions cube;

    @Mixin
    private RolloutOptions options;

    @Mixin
    private RacesOption races;

    @Mixin
    private NetOption net;

    @Option(names = "--json", description = "Print JSON, in the form that rollout.schema.json describes.")
    private boolean json;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public RolloutCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        roll = position.roll(roll);
        Position from = position.read(console());
        if (from.finished()) {
            throw new UserError("the game is over in this position: there is nothing to play out");
        }
        if (roll == null && plays.given()) {
            throw new UserError("--plays needs the roll they are plays of: give --roll");
        }
        RolloutSettings settings = options.settings();
        int threads = options.kept().threads();
        Model model = net.load();
        Knowledge knowledge = cube.knowledge(Knowledge.of(model).with(options.tables(console())));
        Question asked = cube.about(roll == null ? Question.before(from) : Question.of(from, roll));
        NetLabel label = NetLabel.of(net.name(), model);
        List<String> judge = new ArrayList<>(List.of("net " + label.sha256()));
        judge.addAll(cube.identity());
        List<Play> compared = roll == null ? List.of() : candidates(asked, knowledge);
        WorkFile file = options.kept().file(Rollouts.FILES, judge, console().err());
        try (Workforce workforce = options.workforce(console())) {
            Rollouts rollouts = workforce == null
                    ? new Rollouts(knowledge::judgement, knowledge::terms, settings, threads)
                    : new Rollouts(workforce.share(knowledge.portable()), settings, workforce);
            RolloutJob job = new RolloutJob(
                    asked, compared, rollouts, label, settings, file, console().err());
            Interruption.during(() -> print(job.run()), job::stop);
        }
        return 0;
    }

    private int most() {
        if (top < 1) {
            throw new UserError("--top is " + top + ": compare at least 1 play");
        }
        return top;
    }

    /** The plays that were named, else those that the judge finds worth it. */
    private List<Play> candidates(Question question, Knowledge knowledge) {
        List<Play> named = plays.read(question.position(), roll);
        if (!named.isEmpty()) {
            return named;
        }
        int most = most();
        try (Judge judge = new Judge(knowledge, options.kept().threads())) {
            return judge.ask(question, races.on(Effort.STATIC)).candidates(most);
        }
    }

    private void print(RolloutSummary summary) {
        if (json) {
            RolloutJson.write(summary, out());
        } else {
            RolloutText.write(summary, out());
        }
        out().flush();
        options.kept().requireKept();
    }
}
