package org.pipwright.cli.desk;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import org.pipwright.cli.page.Pages;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.record.RecordText;
import org.pipwright.engine.record.SgfText;
import org.pipwright.engine.rules.GameResult;

/** What a desk answers about tables at which games are played. */
final class PlayRoutes {
    private static final int LONGEST_PLAY = 200;

    /** Lookahead of the net that is asked at a table. */
    private static final int OPINION = 1;

    private final DeskSetup setup;
    private final Tables tables;
    private final KeptGames kept;
    private final TableForm form;
    private final Judges judges;
    private final Supplier<Optional<Tablets>> tablets;

    PlayRoutes(DeskSetup setup, Tables tables, KeptGames kept, Judges judges, Supplier<Optional<Tablets>> tablets) {
        this.setup = setup;
        this.tables = tables;
        this.kept = kept;
        this.judges = judges;
        this.tablets = tablets;
        form = new TableForm(setup, judges);
    }

    void add(RoutesConfig routes) {
        routes.get("/", context -> home(context, "", Map.of()));
        routes.post(
                "/tables",
                context -> lay(context, number -> form.table(name -> text(context, name), number), typed(context)));
        routes.post("/tables/kept", context -> lay(context, number -> kept.table(text(context, "record")), Map.of()));
        routes.get("/tables/{table}", context -> show(context, ""));
        routes.post("/tables/{table}/throw", context -> act(context, PlayTable::throwDice));
        routes.post("/tables/{table}/play", context -> act(context, table -> table.play(text(context, "play"))));
        routes.post(
                "/tables/{table}/cube",
                context -> act(context, table -> table.cube(choice(CubeAction.class, text(context, "action")))));
        routes.post(
                "/tables/{table}/resign",
                context -> act(context, table -> table.resign(choice(GameResult.class, text(context, "result")))));
        routes.post("/tables/{table}/back", context -> act(context, PlayTable::back));
        routes.post("/tables/{table}/game", context -> act(context, PlayTable::nextGame));
        routes.post("/tables/{table}/step", this::step);
        routes.get("/tables/{table}/opinion", this::opinion);
        routes.get(
                "/tables/{table}/record.txt",
                context -> file(
                        context, "text/plain", RecordText.print(table(context).record())));
        routes.get(
                "/tables/{table}/record.sgf",
                context -> file(
                        context,
                        "application/x-go-sgf",
                        SgfText.print(table(context).record())));
    }

    /** While a net still thinks there is nothing new to show; two pages may ask for the same step. */
    private void step(Context context) {
        PlayTable table = table(context);
        boolean done = !table.netToAct();
        try {
            done = done || table.step();
        } catch (RefusedException e) {
            done = true;
        }
        if (!done && context.header("HX-Request") != null) {
            context.status(HttpStatus.NO_CONTENT);
        } else {
            act(context, same -> {});
        }
    }

    private void home(Context context, String error, Map<String, String> typed) {
        HomeView view = new HomeView(
                setup.nets(),
                setup.folder().toString(),
                error,
                List.copyOf(setup.opened().keySet()),
                tables.all().entrySet().stream()
                        .map(each -> new HomeView.Laid(
                                each.getKey(),
                                String.join(
                                        " against ",
                                        each.getValue().record().heading().players())))
                        .toList(),
                kept.besides(tables),
                tablets.get(),
                typed);
        html(context, Pages.of("desk/home.jte", view));
    }

    private void lay(Context context, IntFunction<PlayTable> table, Map<String, String> typed) {
        try {
            context.redirect("/tables/" + tables.add(table), HttpStatus.SEE_OTHER);
        } catch (IllegalArgumentException e) {
            context.status(HttpStatus.UNPROCESSABLE_CONTENT);
            home(context, e.getMessage(), typed);
        }
    }

    /** What was typed, so that only what was wrong need be typed anew. */
    private static Map<String, String> typed(Context context) {
        Map<String, String> typed = new TreeMap<>();
        for (String name : context.formParamMap().keySet()) {
            String text = text(context, name);
            if (text != null) {
                typed.put(name, text);
            }
        }
        return typed;
    }

    private PlayTable table(Context context) {
        return tables.find(number(context)).orElseThrow(() -> new NotFoundResponse("there is no such table"));
    }

    private static int number(Context context) {
        String number = context.pathParam("table");
        return number.matches("[0-9]{1,4}") ? Integer.parseInt(number) : 0;
    }

    private void act(Context context, Consumer<PlayTable> action) {
        PlayTable table = table(context);
        String error = "";
        try {
            action.accept(table);
        } catch (RefusedException e) {
            error = e.getMessage();
        }
        if (context.header("HX-Request") == null && error.isEmpty()) {
            context.redirect("/tables/" + number(context), HttpStatus.SEE_OTHER);
        } else {
            show(context, error);
        }
    }

    private void show(Context context, String error) {
        TableView view = TableView.of(number(context), table(context), error);
        boolean part = context.header("HX-Request") != null;
        html(context, Pages.of(part ? "desk/changed.jte" : "desk/table.jte", view));
    }

    /** Comes back for the answer, as long as it is shown, until it is there. */
    private void opinion(Context context) {
        PlayTable table = table(context);
        String net = setup.nets().get(0);
        Optional<Verdict> verdict = table.opinion(judges.of(net, OPINION));
        if (verdict.isPresent()) {
            html(
                    context,
                    Pages.of("desk/opinion.jte", Opinion.of(verdict.get(), net + ", lookahead " + OPINION + ",")));
        } else if (table.decision() && context.queryParam("again") != null) {
            // Whoever hears the page has been told that the net thinks.
            context.status(HttpStatus.NO_CONTENT);
        } else if (table.decision()) {
            html(context, Pages.of("desk/thinking.jte", context.path()));
        } else {
            html(context, Pages.of("desk/opinion.jte", new Opinion("There is nothing to decide here", "", List.of())));
        }
    }

    private static void file(Context context, String type, String text) {
        context.contentType(type + "; charset=utf-8").result(text);
    }

    private static void html(Context context, String text) {
        context.contentType("text/html; charset=utf-8").result(text);
    }

    private static String text(Context context, String name) {
        String text = context.formParam(name);
        return text == null || text.length() > LONGEST_PLAY ? null : text;
    }

    private static <E extends Enum<E>> E choice(Class<E> type, String word) {
        for (E each : type.getEnumConstants()) {
            if (each.name().equalsIgnoreCase(word)) {
                return each;
            }
        }
        throw new RefusedException("choose one of the buttons");
    }
}
