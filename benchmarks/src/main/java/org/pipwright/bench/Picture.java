package org.pipwright.bench;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.function.Consumer;
import javax.imageio.ImageIO;
import org.pipwright.charts.DrawnSvg;
import org.pipwright.engine.files.AtomicFile;

/**
 * What is drawn, as a file: the same figures always give the same bytes.
 *
 * @param width in units
 * @param height in units
 * @param drawing draws it
 */
public record Picture(int width, int height, Consumer<Graphics2D> drawing) {
    /** Dots of the PNG for one unit. */
    private static final int SCALE = 2;

    /** An SVG document. */
    public String svg() {
        return DrawnSvg.file(width, height, drawing);
    }

    /** A PNG, twice as large. */
    public byte[] png() throws IOException {
        BufferedImage image = new BufferedImage(SCALE * width, SCALE * height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.scale(SCALE, SCALE);
        drawing.accept(graphics);
        graphics.dispose();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(image, "png", bytes);
        return bytes.toByteArray();
    }

    /** Writes both, {@code name.svg} and {@code name.png}, each complete or not at all. */
    public void write(Path folder, String name) throws IOException {
        byte[] png = png();
        AtomicFile.write(folder.resolve(name + ".svg"), to -> to.write(svg().getBytes(StandardCharsets.UTF_8)));
        AtomicFile.write(folder.resolve(name + ".png"), to -> to.write(png));
    }
}
