package org.pipwright.cli.desk;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.pipwright.cli.report.NetLabel;
import org.pipwright.cli.report.ReviewCard;
import org.pipwright.cli.report.ReviewCurve;
import org.pipwright.cli.report.ReviewPage;
import org.pipwright.cli.report.ReviewReport;
import org.pipwright.engine.judge.Effort;
import org.pipwright.engine.ranking.Grade;
import org.pipwright.engine.record.Heading;
import org.pipwright.engine.review.Moment;
import org.pipwright.engine.review.ReviewedTurn;

/** Makes what pages show of a record that is gone through. */
final class RecordViews {
    private final String id;
    private final String file;
    private final RecordReview reviewed;
    private final Opinions opinions;

    /**
     * Views of a record.
     *
     * @param id what it is called in addresses
     * @param file where it comes from; may be empty
     * @param reviewed the record
     * @param opinions what its net is called and knows
     */
    RecordViews(String id, String file, RecordReview reviewed, Opinions opinions) {
        this.id = id;
        this.file = file;
        this.reviewed = reviewed;
        this.opinions = opinions;
    }

    /** A turn of its own, as of now. */
    RecordView view(Moment moment) {
        RecordReview.Standing standing = reviewed.standing();
        ReviewReport report = report(standing);
        Optional<ReviewedTurn> judged = standing.turn(moment);
        ReviewCard card =
                judged.map(turn -> ReviewCard.of(report, turn)).orElseGet(() -> ReviewCard.unjudged(heading(), moment));
        List<Moment> game = game(moment.game());
        boolean whole = game.stream().allMatch(turn -> standing.turn(turn).isPresent());
        boolean every = standing.review().turns().size() == standing.all();
        return new RecordView(
                id,
                List.of(heading().name(0), heading().name(1)),
                file,
                card,
                judged.isPresent() ? opinions.net() + ", lookahead " + reviewed.depth(moment) : "",
                ReviewPage.about(report, moment.game()),
                games(moment),
                steps(moment),
                game.stream().map(turn -> line(report, standing, turn, moment)).toList(),
                whole ? Optional.of(ReviewCurve.of(report, moment.game())) : Optional.empty(),
                every ? ReviewPage.accounts(report) : List.of(),
                progress(standing),
                !standing.complete() && standing.problem().isEmpty(),
                said(card));
    }

    private Heading heading() {
        return reviewed.record().heading();
    }

    /** The market is asked about where a turn has been judged; the net has been loaded then. */
    private ReviewReport report(RecordReview.Standing standing) {
        return new ReviewReport(
                standing.review(),
                new NetLabel(opinions.net(), ""),
                stakes -> opinions.knowledge().terms().apply(stakes),
                question -> opinions.judge()
                        .inTurn(() -> false, judge -> judge.quickMarket(question, Effort.STATIC.withRaces(true))));
    }

    private List<Moment> game(int game) {
        return reviewed.moments().stream().filter(turn -> turn.game() == game).toList();
    }

    private List<RecordView.Game> games(Moment shown) {
        return IntStream.range(0, reviewed.record().games().size())
                .filter(game -> !game(game).isEmpty())
                .mapToObj(game ->
                        new RecordView.Game(game + 1, ReviewCard.id(game(game).get(0)), game == shown.game()))
                .toList();
    }

    private List<RecordView.Step> steps(Moment moment) {
        List<Moment> all = reviewed.moments();
        int at = all.indexOf(moment);
        String mistake = "/records/" + id + "/mistake?at=" + ReviewCard.id(moment) + "&way=";
        return List.of(
                new RecordView.Step(at == 0 ? "" : to(all.get(at - 1)), "Back", "arrowleft", "←"),
                new RecordView.Step(at + 1 == all.size() ? "" : to(all.get(at + 1)), "On", "arrowright", "→"),
                new RecordView.Step(mistake + "back", "Mistake before", "p", "P"),
                new RecordView.Step(mistake + "on", "Next mistake", "n", "N"));
    }

    private String to(Moment moment) {
        return "/records/" + id + "?at=" + ReviewCard.id(moment);
    }

    private RecordView.Line line(ReviewReport report, RecordReview.Standing standing, Moment turn, Moment shown) {
        return new RecordView.Line(
                ReviewCard.id(turn),
                turn.turn() + 1,
                turn.onRoll(),
                standing.turn(turn)
                        .map(judged -> ReviewCard.acts(report, judged))
                        .orElseGet(() -> ReviewCard.acts(heading(), turn)),
                turn == shown);
    }

    private static String progress(RecordReview.Standing standing) {
        if (!standing.problem().isEmpty()) {
            return standing.problem();
        }
        if (standing.complete()) {
            return "Lookahead " + RecordReview.LOOKAHEAD + ": all " + standing.all() + " turns, " + mistakes(standing)
                    + ".";
        }
        return "Lookahead " + RecordReview.LOOKAHEAD + ": " + standing.done() + " of " + standing.all()
                + " turns so far.";
    }

    /** How many turns have a mistake, in words. */
    static String mistakes(RecordReview.Standing standing) {
        List<ReviewedTurn> wrong =
                standing.review().turns().stream().filter(RecordViews::mistake).toList();
        return wrong.isEmpty()
                ? "no mistake"
                : wrong.size() == 1 ? "1 with a mistake" : wrong.size() + " with mistakes";
    }

    /** Whether a turn has a decision that cost something. */
    static boolean mistake(ReviewedTurn turn) {
        return turn.decisions().stream().anyMatch(decision -> decision.counted() && decision.grade() != Grade.FINE);
    }

    private static String said(ReviewCard card) {
        List<String> acts = new ArrayList<>();
        for (ReviewCard.Act act : card.acts()) {
            acts.add((act.words() + " " + act.grade() + " " + act.cost()).strip());
        }
        return "Turn " + card.number() + ", " + card.name() + ": "
                + acts.stream().collect(Collectors.joining(", ")) + ".";
    }
}
