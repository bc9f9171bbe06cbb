package org.pipwright.cli.command;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Supplier;
import org.pipwright.cli.console.Console;
import org.pipwright.cli.duel.Interruption;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.ReviewJson;
import org.pipwright.cli.report.ReviewPage;
import org.pipwright.cli.report.ReviewReport;
import org.pipwright.cli.report.ReviewText;
import org.pipwright.engine.files.WorkFile;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.judge.Judge;
import org.pipwright.engine.judge.Knowledge;
import org.pipwright.engine.network.Model;
import org.pipwright.engine.parallel.Workforce;
import org.pipwright.engine.record.GameRecord;
import org.pipwright.engine.review.Review;
import org.pipwright.engine.review.ReviewSettings;
import org.pipwright.engine.review.Reviews;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Record to a judgement of everything that was decided in it. */
@Command(
        name = "review",
        customSynopsis = "pipwright review FILE [options]",
        header = "Grade a recorded game, match or session.",
        description = {
            "Judges every play and every decision about the cube: what it cost against the best choice, a word for that"
                    + " cost, and what would have been better; the luck of each roll; what each side gave away on average; and"
                    + " where the game turned. In a match by the chance to win it, at the score and with the Crawford rule;"
                    + " else by points with the cube, under the record's own rules.",
            "Forced plays are no decisions. With --html also one page for a browser, which needs nothing else: boards, the"
                    + " chance to win over each game, and a place for each decision."
        },
        footer = {
            "Examples:",
            "  pipwright review evening.txt",
            "  pipwright review evening.sgf --html evening.html --lookahead 2 --save evening.review",
            "  pipwright review evening.sgf --html evening.html --lookahead 2 --resume evening.review"
        })
public final class ReviewCommand extends CliCommand {
    @Parameters(paramLabel = "FILE", description = "A record, or an SGF file if its name ends in .sgf.")
    private String file;

    @Option(
            names = "--html",
            paramLabel = "FILE",
            converter = OutputFile.Html.class,
            description = "Write a page for a browser, instead of the text.")
    private Path html;

    @Mixin
    private ReviewOptions options;

    @Mixin
    private MatchTableOption table;

    @Mixin
    private NetOption net;

    @Mixin
    private TablesOption tables;

    @Mixin
    private ClusterOption cluster;

    @Option(names = "--json", description = "Print JSON, in the form that review.schema.json describes.")
    private boolean json;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public ReviewCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        ReviewSettings settings = options.settings();
        GameRecord record = RecordFiles.read(file);
        RecordFiles.requireTurns(file, record);
        int threads = options.kept().threads();
        Model model = net.load();
        NetLabel label = NetLabel.of(net.name(), model);
        Knowledge knowledge = table.knowledge(
                Knowledge.of(model).with(tables.standard(threads, console())),
                record.heading().rules());
        WorkFile kept = options.kept()
                .file(
                        Reviews.FILES,
                        List.of("net " + label.sha256(), "table " + table.identity()),
                        console().err());
        ReviewProgress progress = new ReviewProgress(console().err());
        int[] code = {0};
        try (Workforce workforce = cluster.openIfGiven(console())) {
            Reviews reviews = workforce == null
                    ? new Reviews(knowledge, settings, threads)
                    : new Reviews(knowledge, settings, workforce);
            Interruption.during(
                    () -> code[0] = report(() -> reviews.review(record, kept, progress), label, knowledge, progress),
                    progress::stop);
        }
        return code[0];
    }

    private int report(Supplier<Review> reviewing, NetLabel label, Knowledge knowledge, ReviewProgress progress) {
        Review review;
        try {
            review = reviewing.get();
        } catch (CancellationException e) {
            review = null;
        } finally {
            progress.close();
        }
        if (review == null) {
            console()
                    .err()
                    .println("pipwright: stopped " + progress.reached()
                            + options.kept().howToGoOn());
            return 2;
        }
        try (Judge judge = new Judge(knowledge, options.kept().threads())) {
            Effort races = Effort.STATIC.withRaces(review.settings().simulateRaces());
            write(new ReviewReport(review, label, knowledge.terms(), question -> judge.quickMarket(question, races)));
        }
        out().flush();
        options.kept().requireKept();
        return 0;
    }

    private void write(ReviewReport report) {
        if (html != null) {
            OutputFile.write(html, ReviewPage.html(report).getBytes(StandardCharsets.UTF_8));
        }
        if (json) {
            ReviewJson.write(report, out());
        } else if (html != null) {
            out().println("wrote " + html);
        } else {
            ReviewText.write(report, out());
        }
    }
}
