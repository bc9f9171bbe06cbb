package org.pipwright.cli.desk;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import org.pipwright.cli.page.Pages;
import org.pipwright.engine.cube.CubeAction;
import org.pipwright.engine.judge.PlayVerdict;
import org.pipwright.engine.judge.Question;
import org.pipwright.engine.judge.Verdict;
import org.pipwright.engine.play.Play;
import org.pipwright.engine.play.Plays;

/** What a desk shows to a class: what is set up, large, with the answer covered until the class has guessed. */
final class ClassRoutes {
    private static final int PATIENCE_SECONDS = 3;
    private static final Map<String, CubeAction> ACTIONS =
            Map.of("roll", CubeAction.ROLL, "double, take", CubeAction.TAKE, "double, pass", CubeAction.PASS);

    private final Opinions opinions;
    private final Optional<GuestServer> guests;

    ClassRoutes(Opinions opinions, Optional<GuestServer> guests) {
        this.opinions = opinions;
        this.guests = guests;
    }

    void add(RoutesConfig routes) {
        routes.get("/class", this::show);
        if (guests.isPresent()) {
            routes.get("/class/tablets", context -> tablets(context, guests.get()));
            routes.post("/class/code", context -> {
                guests.get().renew();
                context.redirect("/", HttpStatus.SEE_OTHER);
            });
        }
    }

    /** Who is here by now, if that has changed. */
    private static void tablets(Context context, GuestServer guests) {
        Tablets now = guests.tablets();
        if ((now.present() + "-" + now.guessed()).equals(context.queryParam("seen"))) {
            context.status(HttpStatus.NO_CONTENT);
        } else {
            context.contentType("text/html; charset=utf-8");
            context.result(Pages.of("desk/tablets.jte", now));
        }
    }

    private void show(Context context) {
        Setting setting = SettingForm.parse(context::queryParam).setting().picking(Optional.empty());
        boolean shown = context.queryParam("answer") != null;
        Optional<Question> question = setting.question();
        String refused = "";
        Guesses guesses = question.map(asked -> Guesses.parse(context.queryParam("guesses"), asked))
                .orElseGet(() -> new Guesses(List.of()));
        String added = context.queryParam("guess");
        if (added != null
                && !added.isBlank()
                && question.isPresent()
                && question.get().roll() != null) {
            try {
                guesses = guesses.adding(added, question.get());
            } catch (RefusedException e) {
                refused = e.getMessage();
            }
            if (refused.isEmpty()) {
                context.redirect(address(setting, guesses, shown), HttpStatus.SEE_OTHER);
                return;
            }
        }
        ClassView view = shown(setting, guesses, shown, refused);
        context.status(view.refused().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
        context.contentType("text/html; charset=utf-8");
        context.result(Pages.of("desk/class.jte", view));
    }

    private static String address(Setting setting, Guesses guesses, boolean shown) {
        return "/class?" + Setting.query(fields(setting, guesses, shown));
    }

    private static Map<String, String> fields(Setting setting, Guesses guesses, boolean shown) {
        Map<String, String> fields = new LinkedHashMap<>(setting.fields());
        if (!guesses.all().isEmpty()) {
            fields.put("guesses", guesses.text());
        }
        if (shown) {
            fields.put("answer", "shown");
        }
        return fields;
    }

    /** The view, which devices of the class see too. */
    private ClassView shown(Setting asked, Guesses guesses, boolean shown, String refused) {
        Optional<Question> question = asked.question();
        Optional<Verdict> verdict = Optional.empty();
        String told = refused;
        try {
            verdict = shown ? question.map(each -> verdict(asked, each)) : Optional.empty();
        } catch (CancellationException e) {
            told = opinions.net() + " still thinks: uncover the answer again in a moment.";
        } catch (IllegalArgumentException e) {
            told = "There is no answer: " + e.getMessage();
        }
        Optional<Verdict> uncovered = verdict;
        String said = told;
        return guests.map(GuestServer::classroom)
                .map(room -> room.show(question, counts -> view(asked, guesses, counts, uncovered, said)))
                .orElseGet(() -> view(asked, guesses, Map.of(), uncovered, said));
    }

    private ClassView view(
            Setting asked, Guesses guesses, Map<String, Integer> counts, Optional<Verdict> verdict, String refused) {
        Optional<Question> question = asked.question();
        boolean shown = verdict.isPresent();
        Setting seen = asked.choosing(verdict.filter(each -> !each.plays().isEmpty())
                .map(each -> each.best().play())
                .orElse(null));
        return new ClassView(
                fields(asked.choosing(null), guesses, shown),
                BoardDrawing.svg(seen),
                BoardDrawing.words(asked.choosing(null)),
                question.map(ClassRoutes::words).orElse("Board"),
                question.isPresent() ? "" : "There is nothing to ask here: go back to the board and set a position up.",
                hands(asked, guesses, counts, verdict),
                question.filter(each -> each.roll() != null)
                        .map(ClassRoutes::plays)
                        .orElse(List.of()),
                refused,
                shown,
                address(asked, guesses, !shown),
                asked.address(),
                verdict.map(each -> AnswerViews.of(seen, each, opinions.net())),
                question.isPresent() && !shown ? asked.query() + "&next=0" : "",
                guests.map(GuestServer::tablets));
    }

    private Verdict verdict(Setting setting, Question question) {
        long until = System.nanoTime() + PATIENCE_SECONDS * 1_000_000_000L;
        return opinions.deepest(question, setting.asking().ahead())
                .map(Opinions.Known::verdict)
                .orElseGet(() -> opinions.at(question, 0, () -> System.nanoTime() > until));
    }

    private static String words(Question question) {
        if (question.roll() != null) {
            return "You have rolled " + question.roll() + ". Which play?";
        }
        return Guesses.doubles(question) ? "Double or roll? And if you double: take or pass?" : "How often do you win?";
    }

    private static List<String> plays(Question question) {
        return Plays.legal(question.position(), question.roll()).stream()
                .map(Play::toString)
                .sorted()
                .collect(Collectors.toList());
    }

    private List<ClassView.Hand> hands(
            Setting setting, Guesses raised, Map<String, Integer> counts, Optional<Verdict> verdict) {
        boolean shown = verdict.isPresent();
        // What only tablets have guessed is told once the answer is uncovered: nobody is to guess what others do.
        Guesses guesses = raised;
        for (String what : shown ? counts.keySet() : Set.<String>of()) {
            guesses = guesses.knows(what) ? guesses : guesses.with(what, 0);
        }
        Guesses all = guesses;
        return all.all().stream()
                .map(guess -> new ClassView.Hand(
                        guess.what(),
                        guess.hands(),
                        shown ? counts.getOrDefault(guess.what(), 0) : 0,
                        address(setting, raised.with(guess.what(), guess.hands() + 1), shown),
                        address(setting, raised.with(guess.what(), guess.hands() - 1), shown),
                        verdict.map(each -> cost(each, guess.what())).orElse(""),
                        verdict.map(each -> grade(each, guess.what())).orElse("")))
                .collect(Collectors.toList());
    }

    private static String cost(Verdict verdict, String what) {
        return verdict.plays().isEmpty()
                ? AnswerViews.cost(verdict, verdict.cube().cost(ACTIONS.get(what)))
                : AnswerViews.cost(verdict, play(verdict, what).cost());
    }

    private static String grade(Verdict verdict, String what) {
        return verdict.plays().isEmpty()
                ? verdict.grade(ACTIONS.get(what)).word()
                : play(verdict, what).grade().word();
    }

    private static PlayVerdict play(Verdict verdict, String what) {
        return verdict.plays().stream()
                .filter(play -> play.play().toString().equals(what))
                .findFirst()
                .orElseThrow();
    }
}
