package org.pipwright.cli.desk;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.pipwright.cli.page.Pages;
import org.pipwright.cli.report.ReviewCard;
import org.pipwright.engine.review.Moment;

/** What a desk answers about records that are gone through: those the user opened, and those of its tables. */
final class RecordRoutes {
    private final Records records;
    private final Opinions opinions;
    private final Streams streams;

    RecordRoutes(Records records, Opinions opinions, Streams streams) {
        this.records = records;
        this.opinions = opinions;
        this.streams = streams;
    }

    void add(RoutesConfig routes) {
        routes.get("/records/{record}", this::turn);
        routes.get("/records/{record}/mistake", this::mistake);
        routes.get("/records/{record}/stream", streams.handler(this::watch));
    }

    private Records.Opened opened(Context context) {
        return records.find(context.pathParam("record"))
                .orElseThrow(() -> new NotFoundResponse("no such record is open, or nothing was played yet"));
    }

    private static Moment moment(Context context, RecordReview reviewed) {
        String at = context.queryParam("at");
        return reviewed.moments().stream()
                .filter(moment -> ReviewCard.id(moment).equals(at))
                .findFirst()
                .orElse(reviewed.moments().get(0));
    }

    private RecordViews views(Records.Opened opened) {
        return new RecordViews(opened.id(), opened.name(), opened.review(), opinions);
    }

    private void turn(Context context) {
        Records.Opened opened = opened(context);
        show(context, opened, moment(context, opened.review()), "");
    }

    private void show(Context context, Records.Opened opened, Moment moment, String instead) {
        RecordView view = views(opened).view(moment);
        context.contentType("text/html; charset=utf-8");
        if (BoardRoutes.part(context)) {
            context.header("HX-Push-Url", view.to(view.turn().id()));
            context.result(Pages.of("desk/recordchanged.jte", instead.isEmpty() ? view : view.saying(instead)));
        } else {
            context.result(Pages.of("desk/record.jte", view));
        }
    }

    /** The next mistake that was found, or the one before. */
    private void mistake(Context context) {
        Records.Opened opened = opened(context);
        RecordReview reviewed = opened.review();
        List<Moment> moments = reviewed.moments();
        int at = moments.indexOf(moment(context, reviewed));
        boolean back = "back".equals(context.queryParam("way"));
        List<Moment> others = new ArrayList<>(back ? moments.subList(0, at) : moments.subList(at + 1, moments.size()));
        if (back) {
            Collections.reverse(others);
        }
        RecordReview.Standing standing = reviewed.standing();
        Optional<Moment> found = others.stream()
                .filter(moment ->
                        standing.turn(moment).filter(RecordViews::mistake).isPresent())
                .findFirst();
        Moment shown = found.orElse(moments.get(at));
        String none = "No mistake " + (back ? "before" : "after") + " this turn"
                + (standing.review().turns().size() == standing.all() ? "." : " has been found yet.");
        if (context.header("HX-Request") == null) {
            context.redirect("/records/" + opened.id() + "?at=" + ReviewCard.id(shown), HttpStatus.SEE_OTHER);
        } else {
            show(context, opened, shown, found.isPresent() ? "" : none);
        }
    }

    /** Has the record reviewed, and sends what changes of the turn that is shown and of its game. */
    private Consumer<Stream> watch(Context context) {
        Records.Opened opened = opened(context);
        Moment moment = moment(context, opened.review());
        RecordViews views = views(opened);
        return stream -> {
            Sent sent =
                    new Sent(opened.review().depth(moment), views.view(moment).said());
            opened.review().watch(stream::gone, () -> sent.send(views.view(moment), opened, moment, stream));
        };
    }

    /** What a page was sent so far. */
    private static final class Sent {
        private int depth;
        private String said;

        /** The page has this much of the turn, and whoever moved to it has heard so. */
        Sent(int depth, String said) {
            this.depth = depth;
            this.said = said;
        }

        void send(RecordView view, Records.Opened opened, Moment moment, Stream stream) {
            int now = opened.review().depth(moment);
            if (now != depth) {
                stream.send("turn", Pages.of("desk/recordturn.jte", view));
                if (!view.said().equals(said)) {
                    said = view.said();
                    stream.say(said);
                }
                depth = now;
            }
            stream.send("game", Pages.of("desk/recordgame.jte", view));
            if (!view.more()) {
                stream.say(view.progress());
            }
        }
    }
}
