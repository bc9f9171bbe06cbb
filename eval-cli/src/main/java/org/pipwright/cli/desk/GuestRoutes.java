package org.pipwright.cli.desk;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntSupplier;
import org.pipwright.cli.page.Pages;
import org.pipwright.engine.judge.Question;

/** What devices of the class are answered: what the teacher shows, and nothing else. Guests make no net think. */
final class GuestRoutes {
    private static final int LONGEST = 200;
    private static final Map<Guests.Entry, String> REFUSALS = Map.of(
            Guests.Entry.WRONG, "That is not the code on the teacher's screen.",
            Guests.Entry.WAIT, "Too many wrong codes have come: wait a minute.",
            Guests.Entry.FULL, "No room is left: " + Guests.MAX + " are in already.");

    private final Guests guests;
    private final Classroom classroom;
    private final IntSupplier port;

    GuestRoutes(Guests guests, Classroom classroom, IntSupplier port) {
        this.guests = guests;
        this.classroom = classroom;
        this.port = port;
    }

    void add(RoutesConfig routes) {
        routes.get("/", this::show);
        routes.get("/now", this::now);
        routes.post("/code", this::code);
        routes.post("/guess", this::guess);
    }

    private String cookieName() {
        return "pipwright-guest-" + port.getAsInt();
    }

    /** The key that a request brings, if it was given to somebody. */
    private Optional<String> guest(Context context) {
        return Optional.ofNullable(context.cookie(cookieName())).filter(guests::knows);
    }

    private void show(Context context) {
        Optional<String> guest = guest(context);
        html(
                context,
                guest.map(key -> Pages.of("desk/guest.jte", view(key, "")))
                        .orElseGet(() -> Pages.of("desk/code.jte", "")));
    }

    /** Pages ask again and again whether something else is shown. */
    private void now(Context context) {
        Optional<String> guest = guest(context);
        if (guest.isEmpty()) {
            context.header("HX-Refresh", "true").status(HttpStatus.UNAUTHORIZED);
        } else if (Integer.toString(classroom.shown().version()).equals(context.queryParam("seen"))) {
            context.status(HttpStatus.NO_CONTENT);
        } else {
            html(context, Pages.of("desk/guestchanged.jte", view(guest.get(), "")));
        }
    }

    private void code(Context context) {
        Guests.Entry entry = guests.look(context.req().getRemoteAddr(), text(context, "code"));
        if (entry == Guests.Entry.RIGHT) {
            context.header("Set-Cookie", cookieName() + "=" + guests.admit() + Door.COOKIE);
            context.redirect("/", HttpStatus.SEE_OTHER);
            return;
        }
        context.status(entry == Guests.Entry.WRONG ? HttpStatus.FORBIDDEN : HttpStatus.TOO_MANY_REQUESTS);
        html(context, Pages.of("desk/code.jte", REFUSALS.get(entry)));
    }

    private void guess(Context context) {
        Optional<String> guest = guest(context);
        if (guest.isEmpty()) {
            context.redirect("/", HttpStatus.SEE_OTHER);
            return;
        }
        try {
            classroom.guess(guest.get(), text(context, "guess"), version(context));
            context.redirect("/", HttpStatus.SEE_OTHER);
        } catch (RefusedException e) {
            context.status(HttpStatus.UNPROCESSABLE_CONTENT);
            html(context, Pages.of("desk/guest.jte", view(guest.get(), e.getMessage())));
        }
    }

    private static int version(Context context) {
        String version = text(context, "version");
        return version != null && version.matches("[0-9]{1,9}") ? Integer.parseInt(version) : -1;
    }

    private GuestView view(String guest, String refused) {
        Classroom.Shown shown = classroom.shown();
        String guess = classroom.guess(guest).orElse("");
        Optional<ClassView.Hand> judged = shown.view().stream()
                .filter(ClassView::shown)
                .flatMap(view -> view.guesses().stream())
                .filter(hand -> hand.what().equals(guess))
                .findFirst();
        return new GuestView(
                shown.version(),
                shown.view(),
                shown.question().map(GuestRoutes::actions).orElse(List.of()),
                guess,
                judged.map(ClassView.Hand::cost).orElse(""),
                judged.map(ClassView.Hand::grade).orElse(""),
                refused);
    }

    private static List<String> actions(Question question) {
        return Guesses.actions(question);
    }

    private static String text(Context context, String name) {
        String text = context.formParam(name);
        return text == null || text.length() > LONGEST ? null : text;
    }

    private static void html(Context context, String text) {
        context.contentType("text/html; charset=utf-8").result(text);
    }
}
