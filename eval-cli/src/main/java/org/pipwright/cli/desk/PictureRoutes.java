package org.pipwright.cli.desk;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;
import org.pipwright.cli.picture.Drawing;
import org.pipwright.cli.picture.NoFontsException;
import org.pipwright.cli.picture.Raster;
import org.pipwright.cli.picture.SvgText;

/** The board that is set up as a file, as {@code draw} makes it. */
final class PictureRoutes {
    /** Pixels, sharp across A4. */
    private static final int WIDTH = 1600;

    void add(RoutesConfig routes) {
        routes.get("/board/picture.svg", this::svg);
        routes.get("/board/picture.png", this::png);
    }

    private static Drawing drawing(Context context) {
        return BoardDrawing.file(SettingForm.parse(context::queryParam).setting());
    }

    private void svg(Context context) {
        file(context, "image/svg+xml; charset=utf-8", "position.svg");
        context.result(SvgText.of(drawing(context)));
    }

    private void png(Context context) {
        try {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            ImageIO.setUseCache(false);
            ImageIO.write(Raster.of(drawing(context), WIDTH), "png", bytes);
            file(context, "image/png", "position.png");
            context.result(bytes.toByteArray());
        } catch (NoFontsException e) {
            context.status(HttpStatus.NOT_IMPLEMENTED);
            context.result(
                    "no PNG: this Java has no fonts to write numbers with; install fontconfig and a font, or save SVG");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void file(Context context, String type, String name) {
        context.contentType(type);
        context.header("Content-Disposition", "attachment; filename=\"" + name + "\"");
    }
}
