package org.pipwright.cli.command;

import org.pipwright.cli.console.UserError;
import org.pipwright.cli.picture.View;
import org.pipwright.engine.text.Excerpt;
import picocli.CommandLine.Option;

/** How a board is shown. */
final class ViewOptions {
    @Option(
            names = "--hide",
            paramLabel = "pips",
            description = "Leave the pip counts out, for those who are to count them.")
    private String hidden;

    @Option(
            names = "--home",
            paramLabel = "left|right",
            description =
                    "Where the home of the side on roll is; left is a mirror image, for those who sit at the other"
                            + " side of the board. Default: right.")
    private String home;

    View view() {
        if (hidden != null && !hidden.equals("pips")) {
            throw new UserError("--hide is '" + Excerpt.of(hidden) + "': only pips can be hidden");
        }
        if (home != null && !home.equals("left") && !home.equals("right")) {
            throw new UserError("--home is '" + Excerpt.of(home) + "': use left or right");
        }
        return new View(hidden == null, "left".equals(home));
    }
}
