package org.pipwright.cli.command;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.picture.Drawing;
import org.pipwright.cli.picture.NoFontsException;
import org.pipwright.cli.picture.Raster;
import org.pipwright.cli.picture.SvgText;
import org.pipwright.cli.picture.Theme;
import org.pipwright.engine.text.Excerpt;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Which picture files to write, and how they look. */
final class PictureOptions {
    private static final int MIN = 50;
    private static final int MAX = 8000;
    private static final int USUAL = 1600;

    @Option(
            names = "--svg",
            paramLabel = "FILE",
            converter = OutputFile.SvgOrStdout.class,
            description = "Write an SVG file; - for standard output.")
    private Path svg;

    @Option(names = "--png", paramLabel = "FILE", converter = OutputFile.Png.class, description = "Write a PNG file.")
    private Path png;

    @Option(
            names = "--width",
            paramLabel = "PIXELS",
            description = "Width of the PNG, " + MIN + " to " + MAX + ". Default: " + USUAL + ", sharp across A4.")
    private Integer width;

    @Option(
            names = "--theme",
            paramLabel = "light|print",
            description = "Colours of a picture: quiet ones for screens, or greys that save ink. Default: light.")
    private String theme;

    @Mixin
    private ForceOption force;

    boolean wanted() {
        return svg != null || png != null;
    }

    void check() {
        if (!wanted() && theme != null) {
            throw new UserError("--theme is for pictures: add --svg FILE or --png FILE");
        }
        if (png == null && width != null) {
            throw new UserError("--width is for PNG: add --png FILE");
        }
        if (width != null && (width < MIN || width > MAX)) {
            throw new UserError("--width is " + width + ": use " + MIN + " to " + MAX + " pixels");
        }
        if (OutputFile.STDOUT.equals(png)) {
            throw new UserError("--png needs the name of a file: only SVG can go to standard output");
        }
        theme();
    }

    Theme theme() {
        switch (theme == null ? "light" : theme) {
            case "light":
                return Theme.LIGHT;
            case "print":
                return Theme.PRINT;
            default:
                throw new UserError("--theme is '" + Excerpt.of(theme) + "': use light or print");
        }
    }

    /** Writes the files and says which, unless a picture goes to standard output itself. */
    void write(Drawing drawing, PrintWriter out) {
        boolean quiet = OutputFile.STDOUT.equals(svg);
        if (quiet) {
            out.print(SvgText.of(drawing));
        } else if (svg != null) {
            OutputFile.write(svg, SvgText.of(drawing).getBytes(StandardCharsets.UTF_8));
            out.println("wrote " + svg);
        }
        if (png != null) {
            OutputFile.write(png, pixels(drawing));
            out.print(quiet ? "" : "wrote " + png + System.lineSeparator());
        }
    }

    private byte[] pixels(Drawing drawing) {
        try {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            ImageIO.setUseCache(false);
            ImageIO.write(Raster.of(drawing, width == null ? USUAL : width), "png", bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (NoFontsException e) {
            throw new UserError("no PNG: this Java has no fonts to write numbers with; install fontconfig and a font,"
                    + " or use --svg");
        }
    }
}
