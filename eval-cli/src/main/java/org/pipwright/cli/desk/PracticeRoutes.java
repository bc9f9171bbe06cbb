package org.pipwright.cli.desk;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.pipwright.cli.page.Pages;

/** What a desk answers about practising. */
final class PracticeRoutes {
    private static final int MAX = 50;
    private static final int LONGEST = 200;

    /** htmx stops to ask when it is answered so. */
    private static final int ASK_NO_MORE = 286;

    private final PracticeSources sources;
    private final Function<PracticeSources.Chosen, Practice> begin;
    private final List<Practice> practices = new ArrayList<>();

    PracticeRoutes(PracticeSources sources, Function<PracticeSources.Chosen, Practice> begin) {
        this.sources = sources;
        this.begin = begin;
    }

    void add(RoutesConfig routes) {
        routes.get("/practice", context -> choose(context, ""));
        routes.post("/practice", this::begin);
        routes.get("/practice/{practice}", context -> show(context, ""));
        routes.post("/practice/{practice}/answer", this::answer);
        routes.post("/practice/{practice}/next", this::next);
        routes.get("/practice/{practice}/ahead", this::ahead);
    }

    private void choose(Context context, String error) {
        html(context, Pages.of("desk/choose.jte", new PracticeChoice(sources.choices(), error)));
    }

    private void begin(Context context) {
        try {
            Practice practice = begin.apply(sources.choose(text(context, "source")));
            int number;
            synchronized (practices) {
                if (practices.size() >= MAX) {
                    throw new IllegalArgumentException(
                            "too many exercise sets have been begun: end the desk and start it again");
                }
                practices.add(practice);
                number = practices.size();
            }
            context.redirect("/practice/" + number, HttpStatus.SEE_OTHER);
        } catch (IllegalArgumentException e) {
            context.status(HttpStatus.UNPROCESSABLE_CONTENT);
            choose(context, e.getMessage());
        }
    }

    private static int number(Context context) {
        String number = context.pathParam("practice");
        return number.matches("[0-9]{1,4}") ? Integer.parseInt(number) : 0;
    }

    private Practice practice(Context context) {
        int number = number(context);
        synchronized (practices) {
            if (number < 1 || number > practices.size()) {
                throw new NotFoundResponse("no exercise set has that number");
            }
            return practices.get(number - 1);
        }
    }

    private void show(Context context, String error) {
        PracticeView view = PracticeView.of(number(context), practice(context), error);
        boolean part = context.header("HX-Request") != null;
        if (part && context.queryParam("again") != null && view.question().isEmpty() && !view.over()) {
            // It is looked for still, as the page says already.
            context.status(HttpStatus.NO_CONTENT);
            return;
        }
        html(context, Pages.of(part ? "desk/practisechanged.jte" : "desk/practise.jte", view));
    }

    private void answer(Context context) {
        try {
            practice(context).answer(text(context, "answer"));
        } catch (RefusedException e) {
            show(context, e.getMessage());
            return;
        }
        shown(context);
    }

    private void next(Context context) {
        practice(context).next();
        shown(context);
    }

    private void shown(Context context) {
        if (context.header("HX-Request") == null) {
            context.redirect("/practice/" + number(context), HttpStatus.SEE_OTHER);
        } else {
            show(context, "");
        }
    }

    /** As long as the page asks, the next exercise is looked for. */
    private void ahead(Context context) {
        context.status(practice(context).ahead() ? ASK_NO_MORE : HttpStatus.NO_CONTENT.getCode());
    }

    private static String text(Context context, String name) {
        String text = context.formParam(name);
        return text == null || text.length() > LONGEST ? null : text;
    }

    private static void html(Context context, String text) {
        context.contentType("text/html; charset=utf-8").result(text);
    }
}
