package org.pipwright.cli.command;

import org.pipwright.cli.console.Console;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.picture.BoardPicture;
import org.pipwright.cli.picture.Caption;
import org.pipwright.cli.picture.Drawing;
import org.pipwright.cli.picture.Scene;
import org.pipwright.cli.picture.Theme;
import org.pipwright.cli.picture.View;
import org.pipwright.cli.report.SceneText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Position to a board: characters, or a picture. */
@Command(
        name = "draw",
        customSynopsis = "pipwright draw POSITION [options]",
        header = "Draw a position: as text, SVG or PNG.",
        description = {
            "A count and a sign for each point, numbered from the side on roll, whose home is at the lower right; the bar"
                    + " in the middle; pip counts and checkers borne off at the side.",
            "With --svg or --png a picture of the same, and no text. SVG stays sharp at any size, on a page and on a"
                    + " screen; an existing file is replaced only once the new one is complete."
        },
        footer = {
            "Examples:",
            "  pipwright draw 2@6 1@bar / 3@4 2@20 of 5",
            "  pipwright draw start --roll 3-1 --play \"8/5 6/5\" --svg opening.svg",
            "  pipwright draw 5@6 3@8 5@13 2@24 / 6@6 4@8 3@13 2@22 --hide pips --home left",
            "  pipwright draw 1@5 1@2 / 1@6 --cube 2 --owner me --theme print --png cube.png"
        })
public final class DrawCommand extends CliCommand {
    @Mixin
    private PositionArgument position;

    @Mixin
    private SceneOptions options;

    @Option(names = "--caption", paramLabel = "TEXT", description = "A text below the board.")
    private String caption;

    @Mixin
    private ViewOptions views;

    @Mixin
    private PictureOptions pictures;

    /**
     * Makes the command.
     *
     * @param console where to write
     */
    public DrawCommand(Console console) {
        super(console);
    }

    @Override
    public Integer call() {
        pictures.check();
        if (caption != null && caption.length() > Caption.LIMIT) {
            throw new UserError("--caption has " + caption.length() + " characters: at most " + Caption.LIMIT);
        }
        View view = views.view();
        Scene scene = options.scene(position.read(console()));
        if (pictures.wanted()) {
            pictures.write(drawing(scene, view, pictures.theme()), out());
        } else {
            SceneText.write(scene, options.after(), view, console().unicode(), out());
            if (caption != null) {
                out().println();
                out().println(Caption.tidy(caption));
            }
        }
        return 0;
    }

    private Drawing drawing(Scene scene, View view, Theme theme) {
        Drawing drawing = options.after()
                ? view.of(BoardPicture.of(scene.titled("Before"), theme))
                        .beside(view.of(BoardPicture.of(scene.after().titled("After " + scene.play()), theme)))
                : view.of(BoardPicture.of(scene, theme));
        return caption == null ? drawing : Caption.under(drawing, caption, theme);
    }
}
