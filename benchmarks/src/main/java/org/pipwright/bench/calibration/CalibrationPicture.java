package org.pipwright.bench.calibration;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.jfree.svg.SVGGraphics2D;

/** The curves of all chances beside each other, three in a row. */
final class CalibrationPicture {
    private static final int COLUMNS = 3;
    private static final int MARGIN = 24;
    private static final int TOP = 110;
    /** Dots of the PNG for one unit of the SVG. */
    private static final int SCALE = 2;

    private static final Color INK = CurveChart.INK;
    private static final Color FAINT = new Color(0x6b, 0x72, 0x7a);

    private CalibrationPicture() {}

    static String svg(Calibration calibration) {
        SVGGraphics2D svg = new SVGGraphics2D(width(), height(calibration));
        // The default is the time of day, and the same figures should give the same file.
        svg.setDefsKeyPrefix("calibration-");
        svg.setGeomDoubleConverter(number -> String.format(Locale.ROOT, "%.2f", number));
        draw(calibration, svg);
        return svg.getSVGDocument();
    }

    static byte[] png(Calibration calibration) throws IOException {
        BufferedImage image =
                new BufferedImage(SCALE * width(), SCALE * height(calibration), BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.scale(SCALE, SCALE);
        draw(calibration, graphics);
        graphics.dispose();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(image, "png", bytes);
        return bytes.toByteArray();
    }

    private static int width() {
        return 2 * MARGIN + COLUMNS * CurveChart.WIDTH;
    }

    private static int height(Calibration calibration) {
        int rows = (calibration.curves().size() + COLUMNS - 1) / COLUMNS;
        return TOP + MARGIN + rows * CurveChart.HEIGHT;
    }

    private static void draw(Calibration calibration, Graphics2D graphics) {
        graphics.setColor(Color.WHITE);
        graphics.fill(new Rectangle2D.Double(0, 0, width(), height(calibration)));
        graphics.setColor(INK);
        graphics.setFont(new Font(Font.SANS_SERIF, Font.BOLD, 18));
        graphics.drawString("Does it happen as often as predicted?", MARGIN + 8, 34);
        graphics.setFont(new Font(Font.SANS_SERIF, Font.PLAIN, 13));
        graphics.setColor(FAINT);
        graphics.drawString(calibration.source(), MARGIN + 8, 56);
        graphics.drawString(
                "Above: observed against predicted, dashed where they are equal. Below: their difference with two standard"
                        + " errors; the band is one point to each side.",
                MARGIN + 8,
                74);
        graphics.drawString(
                "Ranges of the prediction with fewer than " + CurveChart.MIN
                        + " positions are left out; so are positions in which the rules have ruled a chance out.",
                MARGIN + 8,
                92);
        List<Curve> curves = calibration.curves();
        for (int i = 0; i < curves.size(); i++) {
            CurveChart.of(curves.get(i))
                    .draw(
                            graphics,
                            new Rectangle2D.Double(
                                    MARGIN + i % COLUMNS * CurveChart.WIDTH,
                                    TOP + i / COLUMNS * CurveChart.HEIGHT,
                                    CurveChart.WIDTH,
                                    CurveChart.HEIGHT));
        }
    }
}
