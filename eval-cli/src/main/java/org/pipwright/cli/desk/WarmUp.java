package org.pipwright.cli.desk;

import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.pipwright.cli.page.Pages;
import org.pipwright.engine.roll.Roll;

/**
 * Asks about a board and shows it to nobody, over and over, so that Java has compiled what that takes before somebody waits
 * for it: the first answers of a desk took ten times as long as later ones.
 */
final class WarmUp {
    private static final int ROUNDS = 6;

    /** Nothing anybody is likely to set up, for answers are remembered. */
    private static final String POSITION = "2@1 3@4 3@6 2@7 2@9 2@13 1@18 / 3@3 2@5 4@6 2@8 2@11 2@20";

    private WarmUp() {}

    /**
     * Warms up, which takes a second or so.
     *
     * @param opinions whom to ask
     * @param closed whether the desk has been closed
     */
    static void run(Opinions opinions, BooleanSupplier closed) {
        Setting setting = Setting.START.with(Layout.parse(POSITION));
        try {
            for (int round = 0; round < ROUNDS; round++) {
                show(setting, opinions, closed);
                for (Roll roll : Roll.all()) {
                    show(setting.with(Optional.of(roll)), opinions, closed);
                }
            }
        } catch (CancellationException e) {
            // The desk has been closed, or is in use already.
        }
    }

    private static void show(Setting setting, Opinions opinions, BooleanSupplier closed) {
        if (closed.getAsBoolean()) {
            throw new CancellationException("closed");
        }
        opinions.judge().ask(setting.question().orElseThrow(), closed);
        SettingForm form = SettingForm.parse(setting.fields()::get);
        BoardView view = new BoardViews(form, "", name -> null, opinions).view("");
        Pages.of("desk/boardchanged.jte", view);
    }
}
