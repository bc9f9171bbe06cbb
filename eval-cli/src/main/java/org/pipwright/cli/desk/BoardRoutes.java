package org.pipwright.cli.desk;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import org.pipwright.cli.page.Pages;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.roll.Roll;

/** What a desk answers about the board on which positions are set up. Its state is in the address alone. */
final class BoardRoutes {
    private final SplittableRandom luck = new SplittableRandom();
    private final Opinions opinions;
    private final BoardPages pages;
    private final BoardRollout rollout;
    private final Streams streams;

    BoardRoutes(Opinions opinions, BoardRollout rollout, Streams streams) {
        this.opinions = opinions;
        pages = new BoardPages(opinions);
        this.rollout = rollout;
        this.streams = streams;
    }

    void add(RoutesConfig routes) {
        routes.get("/board", this::board);
        routes.get("/board/move", this::move);
        routes.get("/board/put", this::put);
        routes.get("/board/throw", this::throwDice);
        routes.get("/board/stream", streams.handler(this::deeper));
        routes.get("/board/rollout", this::rollOut);
        routes.get("/board/rollout/stream", streams.handler(rollout::asked));
    }

    private static SettingForm form(Context context) {
        return SettingForm.parse(context::queryParam);
    }

    private void board(Context context) {
        SettingForm form = form(context);
        show(context, form, "", BoardViews.summary(form.setting()));
    }

    /** Moves a checker; it stays picked where more are left. */
    private void move(Context context) {
        SettingForm form = form(context);
        Setting setting = form.setting();
        Optional<Place> from = Place.parse(context.queryParam("from"));
        Optional<Place> to = Place.parse(context.queryParam("to"));
        if (from.isEmpty() || to.isEmpty()) {
            show(context, form, "say from where to where a checker goes", "");
            return;
        }
        try {
            Layout moved = setting.layout().moved(from.get(), to.get());
            Optional<Place> left = setting.look().picked().filter(place -> moved.count(place) > 0);
            show(
                    context,
                    form.with(setting.with(moved).picking(left)),
                    "",
                    "One checker from " + from.get().words() + " to " + to.get().words() + ".");
        } catch (RefusedException e) {
            show(context, form, e.getMessage(), "");
        }
    }

    /** Puts so many checkers of one side, or of each, on a place. */
    private void put(Context context) {
        SettingForm form = form(context);
        Setting setting = form.setting();
        try {
            Place place = Place.parse(context.queryParam("place"))
                    .orElseThrow(() -> new RefusedException("say on which point, or on which bar"));
            Layout layout = counted(counted(setting.layout(), place, true, context), place, false, context);
            show(
                    context,
                    form.with(setting.with(layout).picking(Optional.empty())),
                    "",
                    place.words() + ": " + layout.count(place, true) + " of yours, " + layout.count(place, false)
                            + " of the opponent's.");
        } catch (RefusedException e) {
            show(context, form, e.getMessage(), "");
        }
    }

    private static Layout counted(Layout layout, Place place, boolean mine, Context context) {
        String number = context.queryParam(mine ? "mine" : "theirs");
        if (number == null || number.isBlank()) {
            return layout;
        }
        if (!number.matches("[0-9]{1,2}")) {
            throw new RefusedException("a number of checkers is a whole number");
        }
        return layout.with(place, mine, Integer.parseInt(number));
    }

    private void throwDice(Context context) {
        SettingForm form = form(context);
        Roll roll;
        synchronized (luck) {
            roll = Roll.of(luck.nextInt(1, 7), luck.nextInt(1, 7));
        }
        show(context, form.with(form.setting().with(Optional.of(roll))), "", "Thrown: " + roll + ".");
    }

    /** Answers that look further and further ahead, each as soon as it is there. */
    private Consumer<Stream> deeper(Context context) {
        Setting setting = form(context).setting();
        String next = context.queryParam("next");
        int first = next != null && next.matches("[0-9]") ? Integer.parseInt(next) : 0;
        return stream -> setting.question().ifPresent(question -> {
            for (int lookahead = first; lookahead <= setting.asking().ahead(); lookahead++) {
                Verdict verdict = opinions.at(question, lookahead, stream::gone);
                AnswerView view = AnswerViews.of(setting, verdict, opinions.net());
                stream.send("answer", Pages.of("desk/answer.jte", view));
                if (setting.asking().play().isPresent()) {
                    PlayView play = opinions.judge()
                            .inTurn(stream::gone, judge -> PlayView.of(setting, verdict, judge, opinions.knowledge()));
                    stream.send("play", Pages.of("desk/playpart.jte", play));
                }
                stream.say(AnswerViews.said(view));
            }
        });
    }

    /** What makes a page listen to a rollout; it takes the place of what it has listened to before. */
    private void rollOut(Context context) {
        if (part(context)) {
            context.contentType("text/html; charset=utf-8");
            context.result(Pages.of("desk/rolling.jte", context.queryString() == null ? "" : context.queryString()));
        } else {
            context.redirect(form(context).setting().address(), HttpStatus.SEE_OTHER);
        }
    }

    /** The page, or the part of it that changes; a browser without scripts is sent to the address of what it asked for. */
    private void show(Context context, SettingForm form, String refused, String said) {
        boolean wrong = !refused.isEmpty() || !form.errors().isEmpty();
        context.contentType("text/html; charset=utf-8");
        if (part(context)) {
            context.header("HX-Push-Url", form.setting().address());
            context.result(page("desk/boardchanged.jte", context, form, refused, said));
        } else if (wrong) {
            context.status(HttpStatus.UNPROCESSABLE_CONTENT);
            context.result(page("desk/board.jte", context, form, refused, null));
        } else if (asked(context)) {
            context.redirect(form.setting().address(), HttpStatus.SEE_OTHER);
        } else {
            context.result(pages.of(
                    context.queryString(), form.setting(), () -> page("desk/board.jte", context, form, "", null)));
        }
    }

    private String page(String template, Context context, SettingForm form, String refused, String said) {
        return Pages.of(template, new BoardViews(form, refused, context::queryParam, opinions).view(said));
    }

    /** Whether only the part that changes is wanted; a page that one goes back to is wanted as a whole. */
    static boolean part(Context context) {
        return context.header("HX-Request") != null && context.header("HX-History-Restore-Request") == null;
    }

    /** Whether something was asked for that has an address of its own. */
    private static boolean asked(Context context) {
        return !context.path().equals("/board") || context.queryParam("text") != null;
    }
}
