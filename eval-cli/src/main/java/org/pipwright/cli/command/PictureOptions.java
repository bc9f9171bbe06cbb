package org.pipwright.cli.command;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.pipwright.cli.console.UserError;
import org.pipwright.cli.picture.Drawing;
import org.pipwright.cli.picture.NoFontsException;
import org.pipwright.cli.picture.Raster;
import org.pipwright.cli.picture.SvgText;
import org.pipwright.cli.picture.Theme;
import org.pipwright.engine.files.AtomicFile;
import org.pipwright.engine.text.Excerpt;
import picocli.CommandLine.Option;

/** Which picture files to write, and how they look. */
final class PictureOptions {
    private static final String STDOUT = "-";
    private static final int LEAST = 50;
    private static final int MOST = 8000;
    private static final int USUAL = 1600;

    @Option(names = "--svg", paramLabel = "FILE", description = "Write an SVG file; - for standard output.")
    private String svg;

    @Option(names = "--png", paramLabel = "FILE", description = "Write a PNG file.")
    private String png;

    @Option(
            names = "--width",
            paramLabel = "PIXELS",
            description = "Width of the PNG, " + LEAST + " to " + MOST + ". Default: " + USUAL + ", sharp across A4.")
    private Integer width;

    @Option(
            names = "--theme",
            paramLabel = "light|print",
            description = "Colours of a picture: quiet ones for screens, or greys that save ink. Default: light.")
    private String theme;

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
        if (width != null && (width < LEAST || width > MOST)) {
            throw new UserError("--width is " + width + ": use " + LEAST + " to " + MOST + " pixels");
        }
        if (STDOUT.equals(png)) {
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
        boolean quiet = STDOUT.equals(svg);
        if (quiet) {
            out.print(SvgText.of(drawing));
        } else if (svg != null) {
            write(svg, SvgText.of(drawing).getBytes(StandardCharsets.UTF_8));
            out.println("wrote " + svg);
        }
        if (png != null) {
            write(png, pixels(drawing));
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

    /** Tells of a missing folder before the work and not after it. */
    static void requireFolder(String file) {
        try {
            Path folder = Path.of(file).toAbsolutePath().getParent();
            if (folder == null || !Files.isWritable(folder)) {
                throw cannotWrite(file);
            }
        } catch (InvalidPathException e) {
            throw new UserError("'" + Excerpt.of(file) + "' is no file name: " + e.getReason());
        }
    }

    private static UserError cannotWrite(String file) {
        return new UserError("cannot write '" + file + "': its folder is missing, full or not yours to write to");
    }

    /** Writes a file whole or not at all; what goes wrong is the user's to mend. */
    static void write(String file, byte[] bytes) {
        try {
            AtomicFile.write(Path.of(file), out -> out.write(bytes));
        } catch (InvalidPathException e) {
            throw new UserError("'" + Excerpt.of(file) + "' is no file name: " + e.getReason());
        } catch (IOException e) {
            throw cannotWrite(file);
        }
    }
}
